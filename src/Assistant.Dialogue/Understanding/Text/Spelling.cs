namespace Assistant.Dialogue.Understanding.Text;

/// <summary>
/// Mends one slip of the finger in a long word of the trade: "suctoin", "micronss". Only words that the lexicon does not know are
/// mended, the first letter must stand, and two words that fit equally mend nothing.
/// </summary>
internal sealed class Spelling
{
    /// <summary>Shorter words are too near to each other.</summary>
    private const int Shortest = 6;

    private const int Longest = 24;

    private readonly Dictionary<char, List<(string Text, int Word)>> byInitial = [];

    public void Add(string text, int word)
    {
        if (text.Length < Shortest || text.Length > Longest)
        {
            return;
        }

        var list = byInitial.TryGetValue(text[0], out var known) ? known : byInitial[text[0]] = [];
        if (!list.Exists(w => w.Word == word))
        {
            list.Add((text, word));
        }
    }

    /// <summary>The number of the one word that is a slip away, or -1.</summary>
    public int Mend(ReadOnlySpan<char> written)
    {
        if (written.Length is < Shortest or > Longest)
        {
            return -1;
        }

        Span<char> lower = stackalloc char[Longest];
        written.ToLowerInvariant(lower);
        if (!byInitial.TryGetValue(lower[0], out var list))
        {
            return -1;
        }

        var (found, several) = (-1, false);
        var sameLength = false;
        foreach (var (text, word) in list)
        {
            // A word of the same length is the nearer one.
            if (!IsOneSlip(lower[..written.Length], text) || (sameLength && text.Length != written.Length))
            {
                continue;
            }

            several = found >= 0 && sameLength == (text.Length == written.Length);
            (found, sameLength) = (word, text.Length == written.Length);
        }

        return several ? -1 : found;
    }

    // One letter too many, too few, wrong, or two swapped.
    private static bool IsOneSlip(ReadOnlySpan<char> written, ReadOnlySpan<char> word)
    {
        if (Math.Abs(written.Length - word.Length) > 1)
        {
            return false;
        }

        var same = written.CommonPrefixLength(word);
        var left = written[same..];
        var right = word[same..];
        if (left.Length == right.Length)
        {
            return left.IsEmpty || left[1..].SequenceEqual(right[1..])
                || (left.Length > 1 && left[0] == right[1] && left[1] == right[0] && left[2..].SequenceEqual(right[2..]));
        }

        return left.Length > right.Length ? left[1..].SequenceEqual(right) : left.SequenceEqual(right[1..]);
    }
}
