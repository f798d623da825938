using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Numbers;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Reads a refrigerant's name: "R-404A", "404a", "four forty eight a", "are 448 a", "propane", "407".</summary>
internal sealed class RefrigerantReader(Lexicon lexicon)
{
    private readonly int article = lexicon.Words.NumberOf("a");
    private readonly int see = lexicon.Words.NumberOf("see");
    private readonly int c = lexicon.Words.NumberOf("c");
    private readonly int r = lexicon.Words.NumberOf("r");
    private readonly int e = lexicon.Words.NumberOf("e");
    private readonly int co = lexicon.Words.NumberOf("co");

    /// <summary>The refrigerant at a token and the token after it; null where none is named there.</summary>
    public (NamedRefrigerant Name, int End)? Read(string text, IReadOnlyList<Token> tokens, int at)
    {
        if (lexicon.Refrigerants.Called.LongestAt(tokens, at, out var called) is > 0 and var length)
        {
            return (new(called[0], true), at + length);
        }

        if (tokens[at].IsWord(co) && at + 1 < tokens.Count && tokens[at + 1] is { Kind: TokenKind.Number, Value: 2, SpaceBefore: false })
        {
            return (new("R744", true), at + 2);
        }

        var (start, mark) = (at, at);
        while (mark < tokens.Count && lexicon.Refrigerants.Marks.Contains(tokens[mark].Word))
        {
            mark++;
        }

        var dashed = mark > start && mark < tokens.Count && tokens[mark].IsWord(lexicon.Signs.Dash) ? mark + 1 : mark;
        var number = dashed < tokens.Count ? Number(text, tokens, dashed) : default;
        if (!number.Found || number.Value != Math.Floor(number.Value) || number.Value > 9999)
        {
            return null;
        }

        if (!lexicon.Refrigerants.ByNumber.TryGetValue((int)number.Value, out var known))
        {
            return mark > start && tokens[start].IsWord(r) ? (new(null, true), number.End) : null;
        }

        var (designation, end, lettered) = Lettered(tokens, number, known);
        var marked = mark > start && (tokens[mark - 1].IsWord(r) || mark - start > 1 || IsNoun(tokens[mark - 1]));
        return (new(designation, marked || lettered), end);
    }

    // "are" and "our" only count with a letter behind, or where a refrigerant was asked.
    private bool IsNoun(Token token) => !token.IsWord(lexicon.Words.NumberOf("are")) && !token.IsWord(lexicon.Words.NumberOf("our"));

    private (string? Designation, int End, bool Lettered) Lettered(IReadOnlyList<Token> tokens, HeardNumber number, List<(int Letter, string Designation)> known)
    {
        if (number.End < tokens.Count && tokens[number.End].Kind == TokenKind.Word)
        {
            var letter = tokens[number.End].IsWord(see) ? c : tokens[number.End].Word;
            foreach (var (of, designation) in known)
            {
                if (of >= 0 && of == letter)
                {
                    var end = number.End + 1;
                    var sure = !tokens[number.End].IsWord(article) || !number.InDigits || !tokens[number.End].SpaceBefore || end == tokens.Count || number.Value >= 100;
                    return (designation, designation.EndsWith(')') ? AfterIsomer(tokens, end) : end, sure);
                }
            }
        }

        return (known.Count == 1 ? known[0].Designation : null, number.End, false);
    }

    // The "(E)" of R1234ze(E).
    private int AfterIsomer(IReadOnlyList<Token> tokens, int at) =>
        at + 2 < tokens.Count && tokens[at].Kind == TokenKind.Pause && tokens[at + 1].IsWord(e) ? at + 3 : at;

    private HeardNumber Number(string text, IReadOnlyList<Token> tokens, int at)
    {
        if (tokens[at].Kind == TokenKind.Number)
        {
            return tokens[at].Form == NumberForm.Plain ? new(tokens[at].Value, at, at + 1, InDigits: true) : default;
        }

        if (!lexicon.Numbers.Vocabulary.Begins(tokens[at]))
        {
            return default;
        }

        var heard = lexicon.NumberReader.Read(text, tokens, at, _ => false);
        return heard.Open == NumberOpen.No ? heard : default;
    }
}
