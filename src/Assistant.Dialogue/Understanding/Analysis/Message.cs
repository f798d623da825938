using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>A message cut into tokens, without the hesitations and doubled words of speech.</summary>
internal sealed class Message
{
    private Message(string text, List<Token> tokens)
    {
        Text = text;
        Tokens = tokens;
    }

    public string Text { get; }

    public IReadOnlyList<Token> Tokens { get; }

    /// <summary>Markup or programming, which nobody says: the whole message says nothing.</summary>
    public bool IsCode { get; private init; }

    public static Message Read(string text, Lexicon lexicon)
    {
        var tokens = Tokenizer.Cut(text, lexicon.Words);
        var code = false;
        var kept = 0;
        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            code |= token.Kind == TokenKind.Code || IsStatementEnd(tokens, i, lexicon);
            if (lexicon.Filling.Drop.Contains(token.Word) || (kept > 0 && IsSaidTwice(token, tokens[kept - 1], lexicon)))
            {
                continue;
            }

            tokens[kept++] = token is { Kind: TokenKind.Word, Word: < 0 } ? Mended(token, text, lexicon) : token;
        }

        tokens.RemoveRange(kept, tokens.Count - kept);
        return new(text, tokens) { IsCode = code };
    }

    // A number is never guessed from a slip: "twelv" stays what it is.
    private static Token Mended(Token token, string text, Lexicon lexicon)
    {
        var mended = token with { Word = lexicon.Spelling.Mend(text.AsSpan(token.Start, token.End - token.Start)) };
        return lexicon.Numbers.Vocabulary.Find(mended) is null ? mended : token;
    }

    // "is is", but never "one one".
    private static bool IsSaidTwice(Token token, Token before, Lexicon lexicon) =>
        token is { Kind: TokenKind.Word, Word: >= 0 } && token.Word == before.Word && lexicon.Numbers.Vocabulary.Find(token) is null;

    // "; --" ends a database statement, "1=1" stands in one.
    private static bool IsStatementEnd(List<Token> tokens, int at, Lexicon lexicon) =>
        (at > 0 && at + 1 < tokens.Count && tokens[at].IsWord(lexicon.Signs.Equal) && tokens[at - 1].Kind == TokenKind.Number && tokens[at + 1].Kind == TokenKind.Number)
        || at + 2 < tokens.Count && tokens[at].Kind == TokenKind.Stop && tokens[at + 1].IsWord(lexicon.Signs.Dash) && tokens[at + 2].IsWord(lexicon.Signs.Dash);
}
