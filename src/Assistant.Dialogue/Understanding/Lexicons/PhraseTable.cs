using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Phrases of one or more words with what each means; finds the longest that stands at a place in a message.</summary>
internal sealed class PhraseTable<T>
{
    private readonly Dictionary<long, int> next = [];
    private readonly Dictionary<int, List<T>> meanings = [];
    private int nodes = 1;

    /// <summary>Adds one meaning of a phrase; a phrase may have several.</summary>
    public void Add(ReadOnlySpan<int> phrase, T meaning)
    {
        var node = 0;
        foreach (var word in phrase)
        {
            if (!next.TryGetValue(Key(node, word), out var child))
            {
                child = nodes++;
                next.Add(Key(node, word), child);
            }

            node = child;
        }

        if (!meanings.TryGetValue(node, out var list))
        {
            meanings.Add(node, list = []);
        }

        if (!list.Contains(meaning))
        {
            list.Add(meaning);
        }
    }

    /// <summary>The meanings of exactly this phrase.</summary>
    public IReadOnlyList<T> Exactly(ReadOnlySpan<int> phrase)
    {
        var node = 0;
        foreach (var word in phrase)
        {
            if (!next.TryGetValue(Key(node, word), out node))
            {
                return [];
            }
        }

        return meanings.TryGetValue(node, out var list) ? list : [];
    }

    /// <summary>The number of tokens of the longest phrase from <paramref name="at"/>, 0 for none, and what it means.</summary>
    public int LongestAt(IReadOnlyList<Token> tokens, int at, out IReadOnlyList<T> found)
    {
        var (node, longest) = (0, 0);
        found = [];
        for (var i = at; i < tokens.Count && tokens[i].Word >= 0 && next.TryGetValue(Key(node, tokens[i].Word), out node); i++)
        {
            if (meanings.TryGetValue(node, out var list))
            {
                longest = i - at + 1;
                found = list;
            }
        }

        return longest;
    }

    private static long Key(int node, int word) => ((long)node << 32) | (uint)word;
}
