namespace Assistant.Dialogue.Understanding.Text;

/// <summary>Numbers the words of the lexicon, so that phrases are compared by number and not by letter.</summary>
internal sealed class WordTable
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> bySpan;
    private readonly HashSet<int> contractions = [];

    public WordTable()
    {
        bySpan = numbers.GetAlternateLookup<ReadOnlySpan<char>>();
        Is = NumberOf("is");
    }

    public int Is { get; }

    /// <summary>Set once the lexicon is complete: from then on unknown words stay unknown, and reading is safe from several threads.</summary>
    public bool Closed { get; set; }

    /// <summary>The number of a lower-case word; -1 where it is unknown and the table closed.</summary>
    public int NumberOf(ReadOnlySpan<char> word)
    {
        if (bySpan.TryGetValue(word, out var known))
        {
            return known;
        }

        if (Closed)
        {
            return -1;
        }

        bySpan[word] = numbers.Count;
        return numbers.Count - 1;
    }

    /// <summary>Lets a short form stand for a word ("u" for "you"); false where it is a word of its own, or the word is not known.</summary>
    public bool Spell(string written, string meant)
    {
        if (numbers.ContainsKey(written) || !numbers.TryGetValue(meant, out var number))
        {
            return false;
        }

        numbers[written] = number;
        return true;
    }

    /// <summary>Whether an apostrophe and s at its end belong to the word ("it's", "what's") and are not an "is" of their own ("head's").</summary>
    public bool KeepsItsS(int word) => contractions.Contains(word);

    public void KeepItsS(int word) => contractions.Add(word);
}
