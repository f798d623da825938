using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads commands.yaml: the whole messages that are commands. '#' stands for a number, '*' at the end for a name.</summary>
internal sealed class CommandsPart(LexiconFile file, WordTable words)
{
    /// <summary>The command that begins a walk, or takes it up again.</summary>
    public const string Begin = "begin";

    private readonly Dictionary<string, string> walks = new(StringComparer.Ordinal);

    public PhraseTable<string> Commands { get; } = new();

    /// <summary>The walk that a command of the table begins.</summary>
    public IReadOnlyDictionary<string, string> Walks => walks;

    public PhraseTable<bool> PolitePhrases { get; } = new();

    public int NumberSlot { get; } = words.NumberOf("#");

    public int NameSlot { get; } = words.NumberOf("*");

    /// <summary>The first token after the polite words at the beginning of a message.</summary>
    public int AfterPoliteness(IReadOnlyList<Token> tokens)
    {
        var at = 0;
        while (at < tokens.Count)
        {
            var polite = PolitePhrases.LongestAt(tokens, at, out _);
            if (polite == 0 && !tokens[at].EndsClause)
            {
                break;
            }

            at += Math.Max(polite, 1);
        }

        return at;
    }

    public void Read()
    {
        file.AllowOnly("polite", "commands");
        foreach (var (phrase, _, _) in file.Phrases("polite"))
        {
            PolitePhrases.Add(phrase, true);
        }

        foreach (var (command, _, entry) in file.Entries("commands"))
        {
            Add(file, file.Phrases(entry, command), command);
        }
    }

    /// <summary>Takes the words that begin a walk from its own file.</summary>
    public void ReadWalk(LexiconFile walkFile)
    {
        if (walkFile.Text(walkFile.Root, "walk", "walk") is { Length: > 0 } walk)
        {
            var command = $"{Begin} {walk}";
            walks[command] = walk;
            Add(walkFile, walkFile.Phrases("begins"), command);
        }
    }

    private void Add(LexiconFile from, IEnumerable<(int[] Phrase, string Text, YamlNode At)> phrases, string command)
    {
        foreach (var (phrase, text, at) in phrases)
        {
            if (Commands.Exactly(phrase) is [var other, ..] && other != command)
            {
                from.Report(DefectKind.DuplicateId, at, command, $"'{text}' already is {other}");
            }
            else
            {
                Commands.Add(phrase, command);
            }
        }
    }
}
