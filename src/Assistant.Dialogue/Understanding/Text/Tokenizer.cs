namespace Assistant.Dialogue.Understanding.Text;

/// <summary>
/// Cuts a message into words, numbers and signs. Letters are lower-cased, apostrophes dropped ("don't" is "dont", but "head's" is "head is"), hyphens
/// between letters are spaces, and letters part from digits ("10psi", "2lb6oz", "R448A").
/// </summary>
internal static class Tokenizer
{
    public static List<Token> Cut(string text, WordTable words)
    {
        var tokens = new List<Token>(Math.Min(text.Length / 4 + 4, 4096));
        var space = true;
        for (var i = 0; i < text.Length;)
        {
            var c = text[i];
            if (char.IsWhiteSpace(c))
            {
                space = true;
                if (c == '\n')
                {
                    tokens.Add(new(TokenKind.Pause, -1, i, i + 1, space));
                }

                i++;
                continue;
            }

            var token = Next(text, i, space, words);
            if (token is { } found)
            {
                if (found.Kind == TokenKind.Word && words.Closed && EndsInApostropheS(text, found) && !words.KeepsItsS(found.Word))
                {
                    tokens.Add(Word(text, found.Start, found.End - 2, space, words));
                    tokens.Add(new(TokenKind.Word, words.Is, found.End - 2, found.End, false));
                }
                else
                {
                    tokens.Add(found);
                }

                space = false;
                i = found.End;
            }
            else
            {
                // An apostrophe or hyphen inside a word, an emoji: apart like a space, unless letters stand on both sides.
                space |= c != '\'' && c != '’';
                i++;
            }
        }

        return tokens;
    }

    private static Token? Next(string text, int at, bool space, WordTable words)
    {
        var c = text[at];
        if (IsLetter(c))
        {
            return Word(text, at, text.Length, space, words);
        }

        if (char.IsAsciiDigit(c) || (c == '.' && IsDigitAt(text, at + 1) && !IsDigitAt(text, at - 1) && !IsDotAt(text, at - 1)))
        {
            return Digits(text, at, space);
        }

        if ((char.IsLetter(c) && c != 'º') || char.IsDigit(c))
        {
            return new(TokenKind.Foreign, -1, at, at + 1, space);
        }

        return c switch
        {
            ',' or '(' or ')' => new(TokenKind.Pause, -1, at, at + 1, space),
            '.' or '!' or ';' or '…' => new(TokenKind.Stop, -1, at, at + 1, space),
            '?' => new(TokenKind.Question, -1, at, at + 1, space),
            '½' => new(TokenKind.Number, -1, at, at + 1, space, 0.5, NumberForm.Fraction),
            '¼' => new(TokenKind.Number, -1, at, at + 1, space, 0.25, NumberForm.Fraction),
            '¾' => new(TokenKind.Number, -1, at, at + 1, space, 0.75, NumberForm.Fraction),
            '{' or '}' or '\\' or '`' or '|' or '[' or ']' => new(TokenKind.Code, -1, at, at + 1, space),
            '<' when IsLetterAt(text, at + 1) || (at + 1 < text.Length && text[at + 1] is '/' or '!') => new(TokenKind.Code, -1, at, at + 1, space),
            '-' or '–' or '—' or '−' => Dash(text, at, space, words),
            '°' or 'º' or '˚' => Symbol('°', at, space, words),
            '"' or '”' or '“' or '″' => Symbol('"', at, space, words),
            '\'' or '’' or '′' when IsDigitAt(text, at - 1) && !IsLetterAt(text, at + 1) => Symbol('\'', at, space, words),
            '≈' => Symbol('~', at, space, words),
            '#' or '/' or '+' or '±' or '~' or '=' or '<' or '>' or '%' or '$' or '&' or '@' or '*' or '≤' or '≥' => Symbol(c, at, space, words),
            _ => null,
        };
    }

    // "the head's two ten" is the head is; "it's" and its like stand whole in the lexicon.
    private static bool EndsInApostropheS(string text, Token word) =>
        word.End - word.Start > 2 && text[word.End - 1] is 's' or 'S' && text[word.End - 2] is '\'' or '’';

    private static Token Word(string text, int at, int end, bool space, WordTable words)
    {
        Span<char> letters = stackalloc char[24];
        var (length, i) = (0, at);
        for (; i < end; i++)
        {
            var c = text[i];
            if (c is '\'' or '’' && i + 1 < end && IsLetter(text[i + 1]))
            {
                continue;
            }

            if (!IsLetter(c))
            {
                break;
            }

            if (length < letters.Length)
            {
                letters[length] = Lower(c);
            }

            length++;
        }

        var word = length <= letters.Length ? words.NumberOf(letters[..length]) : -1;
        return new(TokenKind.Word, word, at, i, space);
    }

    private static Token Digits(string text, int at, bool space)
    {
        var end = at;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || (text[end] is '.' or ',' && DigitAfterSeparators(text, end))))
        {
            end++;
        }

        if (end + 2 < text.Length && text[end] == ':' && IsDigitAt(text, end + 1) && IsDigitAt(text, end + 2))
        {
            return new(TokenKind.Clock, -1, at, AfterClock(text, end), space);
        }

        // "seve.5" is no half: what stands before the point was meant to be a number.
        var (value, form) = text[at] == '.' && IsLetterAt(text, at - 1) ? (0, NumberForm.Malformed) : TypedNumber.Read(text.AsSpan(at, end - at));
        return new(TokenKind.Number, -1, at, end, space, value, form);
    }

    // "22.5" goes on, "22." ends; "10..5" goes on and is no number.
    private static bool DigitAfterSeparators(string text, int at)
    {
        while (at < text.Length && text[at] is '.' or ',')
        {
            at++;
        }

        return IsDigitAt(text, at);
    }

    private static int AfterClock(string text, int end)
    {
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || (text[end] == ':' && IsDigitAt(text, end + 1))))
        {
            end++;
        }

        return end;
    }

    private static Token? Dash(string text, int at, bool space, WordTable words)
    {
        var bothLetters = IsLetterAt(text, at - 1) && IsLetterAt(text, at + 1);
        var beforeLetter = IsDigitAt(text, at - 1) && IsLetterAt(text, at + 1);
        return bothLetters || beforeLetter ? null : Symbol('-', at, space, words);
    }

    private static Token Symbol(char sign, int at, bool space, WordTable words) =>
        new(TokenKind.Symbol, words.NumberOf([sign]), at, at + 1, space);

    private static bool IsLetter(char c) => char.IsAsciiLetter(c) || c is 'µ' or 'μ';

    private static char Lower(char c) => c is 'µ' or 'μ' ? 'u' : char.ToLowerInvariant(c);

    private static bool IsLetterAt(string text, int at) => at >= 0 && at < text.Length && IsLetter(text[at]);

    // Two dots are a pause and no decimal point.
    private static bool IsDotAt(string text, int at) => at >= 0 && text[at] == '.';

    private static bool IsDigitAt(string text, int at) => at >= 0 && at < text.Length && char.IsAsciiDigit(text[at]);
}
