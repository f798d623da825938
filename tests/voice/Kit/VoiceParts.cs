using Assistant.Dialogue.Files;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Rules;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>Hearing and the talk by voice with the repository's own dialogue files, as tests and scoring use them.</summary>
public sealed class VoiceParts : IDisposable
{
    public VoiceParts(HearingThresholds? thresholds = null)
    {
        AcousticModel.Installed.Check();
        Understander = new(Lexicon.Load(Folder("lexicon"), Folder("walks")));
        Phrases = PhraseBook.Load(Folder("phrases"));
        Walks = WalkLibrary.Load(Folder("walks"), Phrases);
        Sounds = PronunciationDictionary.Load(File("dialogs/voice/pronunciations.yaml"), System.IO.File.ReadLines(AcousticModel.Installed.Dictionary), PronunciationDictionary.WordsOf(Folder("lexicon").Concat(Folder("voice")), Walks));
        LexiconPhrases = LexiconPhrases.Read(Folder("lexicon"));
        Plan = ListeningPlan.Load(File("dialogs/voice/listening.yaml"));
        Grammars = new(LexiconPhrases, Plan, Sounds, Understander, Walks);
        Dialogue = new(Grammars, Phrases, Understander);
        Recogniser = SpeechRecogniser.Open(AcousticModel.Installed, Sounds, Grammars.Vocabulary, thresholds);
        Engine = new TurnEngine(
            Phrases, ShortWords.Load(Folder("words").Single()), Walks, Understander.Understand, Assessor.Assess, new QuestionAnswerer(Phrases).Answer);
    }

    public static string Root { get; } = FindRoot();

    public Understander Understander { get; }

    public PhraseBook Phrases { get; }

    public WalkLibrary Walks { get; }

    public PronunciationDictionary Sounds { get; }

    public LexiconPhrases LexiconPhrases { get; }

    public ListeningPlan Plan { get; }

    public QuestionGrammars Grammars { get; }

    public VoiceDialogue Dialogue { get; }

    public SpeechRecogniser Recogniser { get; }

    public ITurnEngine Engine { get; }

    public static DialogFile File(string path) => new(path, System.IO.File.ReadAllText(Path.Combine(Root, path)));

    public void Dispose() => Recogniser.Dispose();

    private static DialogFile[] Folder(string part) =>
        [.. Directory.GetFiles(Path.Combine(Root, "dialogs", part), "*.yaml").Order(StringComparer.Ordinal).Select(p => File(Path.GetRelativePath(Root, p)))];

    private static string FindRoot()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !System.IO.File.Exists(Path.Combine(at.FullName, "Assistant.sln")))
        {
            at = at.Parent;
        }

        return at?.FullName ?? throw new DirectoryNotFoundException("Assistant.sln is in no folder above " + AppContext.BaseDirectory);
    }
}
