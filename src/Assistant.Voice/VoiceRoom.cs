using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;

namespace Assistant.Voice;

/// <summary>
/// All that voice needs, made once when the first word is to be heard: until then the program carries none of it. One recogniser
/// serves all talks; they wait for each other a few tenths of a second at most.
/// </summary>
public sealed class VoiceRoom : IDisposable
{
    private VoiceRoom(SpeechRecogniser recogniser, VoiceDialogue dialogue) => (Recogniser, Dialogue) = (recogniser, dialogue);

    public SpeechRecogniser Recogniser { get; }

    public VoiceDialogue Dialogue { get; }

    /// <param name="lexicon">The files of dialogs/lexicon.</param>
    /// <param name="voice">The files of dialogs/voice.</param>
    /// <exception cref="VoicePartMissingException">A library or the model is not installed.</exception>
    /// <exception cref="DialogDataException">A file has mistakes.</exception>
    public static VoiceRoom Open(IReadOnlyCollection<DialogFile> lexicon, IReadOnlyCollection<DialogFile> voice, PhraseBook phrases, Understander understander, WalkLibrary walks, AcousticModel? model = null)
    {
        model ??= AcousticModel.Installed;
        model.Check();
        var sounds = PronunciationDictionary.Load(Named(voice, "pronunciations.yaml"), File.ReadLines(model.Dictionary), PronunciationDictionary.WordsOf(lexicon.Concat(voice), walks));
        var grammars = new QuestionGrammars(LexiconPhrases.Read(lexicon), ListeningPlan.Load(Named(voice, "listening.yaml")), sounds, understander, walks);
        return new(SpeechRecogniser.Open(model, sounds, grammars.Vocabulary), new(grammars, phrases, understander));
    }

    public VoiceSession Talk(IVoiceVisit visit) => new(Recogniser, Dialogue, visit);

    public void Dispose() => Recogniser.Dispose();

    private static DialogFile Named(IEnumerable<DialogFile> files, string name) =>
        files.FirstOrDefault(f => Path.GetFileName(f.Path) == name)
            ?? throw new DialogDataException([new(DefectKind.MissingField, $"dialogs/voice/{name}", 1, "file", "the file is missing")]);
}
