using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>What the words before a reading's name make of it.</summary>
internal enum RequestOpening
{
    /// <summary>It is asked for, whatever else the message could be.</summary>
    For,

    /// <summary>It is asked for where the message is no question.</summary>
    May,

    /// <summary>It is no longer asked for.</summary>
    Drop,
}

/// <summary>Reads requests.yaml: the words that ask whoever is on site for a reading. '*' stands for a name.</summary>
internal sealed class RequestsPart(LexiconFile file, WordTable words)
{
    private static readonly (string Field, RequestOpening Opening)[] Fields = [("for", RequestOpening.For), ("may", RequestOpening.May), ("drop", RequestOpening.Drop)];

    public PhraseTable<RequestOpening> Openings { get; } = new();

    /// <summary>The words that an opening with a name begins with: only behind these a name is looked for.</summary>
    public HashSet<int> BeforeName { get; } = [];

    public PhraseTable<bool> Behind { get; } = new();

    public void Read()
    {
        file.AllowOnly("for", "may", "behind", "drop");
        foreach (var (field, opening) in Fields)
        {
            foreach (var (phrase, _, _) in file.Phrases(field))
            {
                Openings.Add(phrase, opening);
                if (phrase.Contains(words.NumberOf("*")))
                {
                    BeforeName.Add(phrase[0]);
                }
            }
        }

        foreach (var (phrase, _, _) in file.Phrases("behind"))
        {
            Behind.Add(phrase, true);
        }
    }
}
