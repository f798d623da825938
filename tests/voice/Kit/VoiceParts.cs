using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Voice.Grammars;
using Assistant.Voice.Hearing;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>Hearing with the repository's own dialogue files, as tests and scoring use it.</summary>
public sealed class VoiceParts : IDisposable
{
    public VoiceParts(HearingThresholds? thresholds = null)
    {
        AcousticModel.Installed.Check();
        Understander = new(Lexicon.Load(LexiconFiles));
        Sounds = PronunciationDictionary.Load(File("dialogs/voice/pronunciations.yaml"), System.IO.File.ReadLines(AcousticModel.Installed.Dictionary));
        Grammars = new(LexiconPhrases.Read(LexiconFiles), ListeningPlan.Load(File("dialogs/voice/listening.yaml")), Sounds, Understander);
        Recogniser = SpeechRecogniser.Open(AcousticModel.Installed, Sounds, Grammars.Vocabulary, thresholds);
    }

    public static string Root { get; } = FindRoot();

    public Understander Understander { get; }

    public PronunciationDictionary Sounds { get; }

    public QuestionGrammars Grammars { get; }

    public SpeechRecogniser Recogniser { get; }

    private static DialogFile[] LexiconFiles =>
        [.. Directory.GetFiles(Path.Combine(Root, "dialogs/lexicon"), "*.yaml").Select(p => File(Path.GetRelativePath(Root, p)))];

    public static DialogFile File(string path) => new(path, System.IO.File.ReadAllText(Path.Combine(Root, path)));

    public void Dispose() => Recogniser.Dispose();

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
