using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads commands.yaml: the whole messages that are commands. '#' stands for a number, '*' at the end for a name.</summary>
internal sealed class CommandsPart(LexiconFile file, WordTable words)
{
    public PhraseTable<string> Commands { get; } = new();

    public PhraseTable<bool> PolitePhrases { get; } = new();

    public int NumberSlot { get; } = words.NumberOf("#");

    public int NameSlot { get; } = words.NumberOf("*");

    public void Read()
    {
        file.AllowOnly("polite", "commands");
        foreach (var (phrase, _, _) in file.Phrases("polite"))
        {
            PolitePhrases.Add(phrase, true);
        }

        foreach (var (command, _, entry) in file.Entries("commands"))
        {
            foreach (var (phrase, text, at) in file.Phrases(entry, command))
            {
                if (Commands.Exactly(phrase) is [var other, ..] && other != command)
                {
                    file.Report(DefectKind.DuplicateId, at, command, $"'{text}' already is {other}");
                }
                else
                {
                    Commands.Add(phrase, command);
                }
            }
        }
    }
}
