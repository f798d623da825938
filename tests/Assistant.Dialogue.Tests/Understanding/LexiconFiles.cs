using System.Runtime.CompilerServices;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>The product's own lexicon, read once for all tests.</summary>
public static class LexiconFiles
{
    public static string Root { get; } = RepositoryRoot();

    public static IReadOnlyList<DialogFile> Files { get; } =
        [.. Directory.GetFiles(Path.Combine(Root, "dialogs", "lexicon"), "*.yaml").Order(StringComparer.Ordinal).Select(p => new DialogFile(p, File.ReadAllText(p)))];

    public static Understander Understander { get; } = new(Lexicon.Load(Files, Walks));

    private static IEnumerable<DialogFile> Walks => Directory.GetFiles(Path.Combine(Root, "dialogs", "walks"), "*.yaml").Order(StringComparer.Ordinal).Select(p => new DialogFile(p, File.ReadAllText(p)));

    private static string RepositoryRoot([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));
}
