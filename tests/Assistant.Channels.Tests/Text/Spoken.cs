using Assistant.Dialogue.Files;
using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Rules;

namespace Assistant.Channels.Tests.Text;

/// <summary>The real dialogue from the repository's files.</summary>
internal static class Spoken
{
    private static readonly string Root = FindRoot();

    public static PhraseBook Book { get; } = PhraseBook.Load(Files("phrases"));

    public static Understander Understander { get; } = new(Lexicon.Load(Files("lexicon"), Files("walks")));

    public static ITurnEngine Engine { get; } = new TurnEngine(
        Book,
        ShortWords.Load(Files("words").Single()),
        WalkLibrary.Load(Files("walks"), Book),
        Understander.Understand,
        Assessor.Assess,
        new QuestionAnswerer(Book).Answer);

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static DialogFile[] Files(string part) =>
        [.. Directory.GetFiles(PathOf("dialogs", part), "*.yaml").Order(StringComparer.Ordinal).Select(f => new DialogFile(f, File.ReadAllText(f)))];

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Assistant.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No Assistant.sln above the tests.");
        }

        return folder.FullName;
    }
}
