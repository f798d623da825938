namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>
/// The short form in which the lexicon writes variants: "(low|suction) side [pressure]" is four phrases.
/// Round brackets choose, square brackets may be left out; both nest.
/// </summary>
internal static class PhrasePattern
{
    private const int MostPhrases = 5000;

    /// <exception cref="FormatException">A bracket is not closed, or the pattern stands for too many phrases.</exception>
    public static IReadOnlyList<string> Expand(string pattern)
    {
        var at = 0;
        var phrases = Alternatives(pattern, ref at);
        return at == pattern.Length ? phrases : throw new FormatException($"a bracket too many at character {at + 1} of '{pattern}'");
    }

    private static List<string> Alternatives(string pattern, ref int at)
    {
        var all = Sequence(pattern, ref at);
        while (at < pattern.Length && pattern[at] == '|')
        {
            at++;
            all.AddRange(Sequence(pattern, ref at));
        }

        return all;
    }

    private static List<string> Sequence(string pattern, ref int at)
    {
        List<string> heads = [""];
        while (at < pattern.Length && pattern[at] is not ('|' or ')' or ']'))
        {
            List<string> tails = [];
            var open = pattern[at];
            if (open is '(' or '[')
            {
                at++;
                tails = Alternatives(pattern, ref at);
                if (at >= pattern.Length || pattern[at] != (open == '(' ? ')' : ']'))
                {
                    throw new FormatException($"a bracket is not closed in '{pattern}'");
                }

                at++;
                if (open == '[')
                {
                    tails.Add("");
                }
            }
            else
            {
                var start = at;
                while (at < pattern.Length && !"()[]|".Contains(pattern[at], StringComparison.Ordinal))
                {
                    at++;
                }

                tails.Add(pattern[start..at]);
            }

            heads = [.. heads.SelectMany(h => tails, (h, t) => h + t)];
            if (heads.Count > MostPhrases)
            {
                throw new FormatException($"'{pattern}' stands for more than {MostPhrases} phrases");
            }
        }

        return heads;
    }
}
