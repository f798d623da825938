using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>Reads the number that begins at a token, in digits or in words, as far as it goes.</summary>
internal sealed class NumberReader(NumberVocabulary words, Signs signs)
{
    /// <summary>The number at <paramref name="at"/>; nothing found where none begins there.</summary>
    public HeardNumber Read(string text, IReadOnlyList<Token> tokens, int at, Func<int, bool> isUnitAt)
    {
        var first = tokens[at];
        var number = first.Kind switch
        {
            TokenKind.Number when !SpokenFollows(tokens, at) => InDigits(tokens, at, isUnitAt),
            TokenKind.Number or TokenKind.Word => Spoken(text, tokens, at, isUnitAt),
            _ => default,
        };
        return number.Found ? CutOff(tokens, RunTogether(tokens, number)) : number;
    }

    // "1 seventeen", "2 oh 1": a digit that speech recognition left as a digit.
    private bool SpokenFollows(IReadOnlyList<Token> tokens, int at) =>
        at + 1 < tokens.Count && tokens[at].End - tokens[at].Start == 1 && tokens[at].Form == NumberForm.Plain
        && words.Find(tokens[at + 1])?.Part is NumberPart.Teen or NumberPart.Tens or NumberPart.Oh or NumberPart.Zero or NumberPart.Hundred or NumberPart.Thousand;

    private HeardNumber Spoken(string text, IReadOnlyList<Token> tokens, int at, Func<int, bool> isUnitAt)
    {
        var spoken = new SpokenNumber(tokens, words, at, isUnitAt).Read();
        var end = spoken.Found ? spoken.End : at;
        var rare = end;
        while (rare < tokens.Count && rare - at < 10 && words.Find(tokens[rare]) is not null)
        {
            rare++;
        }

        for (var i = at; i < rare; i++)
        {
            if (words.Is(tokens[i], NumberPart.Rare))
            {
                return ByRecogniser(text, tokens, at, rare);
            }
        }

        return spoken;
    }

    private static HeardNumber ByRecogniser(string text, IReadOnlyList<Token> tokens, int at, int end)
    {
        var value = CardinalRecogniser.ValueOf(text[tokens[at].Start..tokens[end - 1].End].ToLowerInvariant());
        return new(value ?? 0, at, end, value is null ? NumberOpen.Value : NumberOpen.No);
    }

    private HeardNumber InDigits(IReadOnlyList<Token> tokens, int at, Func<int, bool> isUnitAt)
    {
        var first = tokens[at];
        var open = first.Form switch
        {
            NumberForm.Malformed => NumberOpen.Value,
            NumberForm.ThousandsComma => NumberOpen.Comma,
            _ => NumberOpen.No,
        };
        var (value, end) = (first.Value, at + 1);
        if (first.Form == NumberForm.Fraction)
        {
            return new(value, at, end, open, InDigits: true);
        }

        if (SimpleFraction(tokens, at) is { } alone)
        {
            return new(alone, at, at + 3, open, InDigits: true);
        }

        if (end < tokens.Count && tokens[end] is { Kind: TokenKind.Number, Form: NumberForm.Fraction } sign)
        {
            (value, end) = (value + sign.Value, end + 1);
        }
        else if (MixedFraction(tokens, end) is { } mixed)
        {
            (value, end) = (value + mixed.Value, mixed.End);
        }
        else if (Multiplier(tokens, end) is { } times)
        {
            (value, end) = (value * times, end + 1);
        }
        else if (end + 1 < tokens.Count && words.Is(tokens[end], NumberPart.And))
        {
            (value, end, open) = Joined(tokens, value, end, open, isUnitAt);
        }
        else if (end + 1 < tokens.Count && words.Is(tokens[end], NumberPart.Point) && tokens[end + 1].Kind == TokenKind.Number)
        {
            var decimals = tokens[end + 1];
            value += decimals.Value / Math.Pow(10, decimals.End - decimals.Start);
            end += 2;
        }

        return new(value, at, end, open, InDigits: true);
    }

    // "and a half" adds to it; "100 and 17" is one number heard in two.
    private (double, int, NumberOpen) Joined(IReadOnlyList<Token> tokens, double value, int and, NumberOpen open, Func<int, bool> isUnitAt)
    {
        var next = tokens[and + 1];
        if (SimpleFraction(tokens, and + 1) is { } fraction)
        {
            return (value + fraction, and + 4, open);
        }

        if (next.Kind == TokenKind.Number)
        {
            var isTail = value >= 100 && value % 100 == 0 && next is { Form: NumberForm.Plain, Value: > 0 and < 100 };
            return isTail ? (value + next.Value, and + 2, NumberOpen.Joined) : (value, and, open);
        }

        if (words.Find(next)?.Part is NumberPart.Article or NumberPart.Fraction or NumberPart.Digit)
        {
            var tail = new SpokenNumber(tokens, words, and + 1, isUnitAt).Read();
            if (tail.Found && tail.Value < 1)
            {
                return (value + tail.Value, tail.End, open);
            }
        }

        return (value, and, open);
    }

    // "1/2", "3/8": a numerator below a usual denominator.
    private double? SimpleFraction(IReadOnlyList<Token> tokens, int at) =>
        at + 2 < tokens.Count && tokens[at] is { Kind: TokenKind.Number, Form: NumberForm.Plain } above
        && tokens[at + 2] is { Kind: TokenKind.Number, Form: NumberForm.Plain, Value: 2 or 3 or 4 or 8 or 16 or 32 } below
        && tokens[at + 1] is { SpaceBefore: false } slash && slash.IsWord(signs.Slash) && !below.SpaceBefore
        && above.Value < below.Value && above.Value > 0
            ? above.Value / below.Value
            : null;

    // " 1/2" and "-1/2" after a whole number.
    private (double Value, int End)? MixedFraction(IReadOnlyList<Token> tokens, int at)
    {
        if (SimpleFraction(tokens, at) is { } plain)
        {
            return (plain, at + 3);
        }

        return at < tokens.Count && tokens[at] is { SpaceBefore: false } dash && dash.IsWord(signs.Dash) && SimpleFraction(tokens, at + 1) is { } dashed
            ? (dashed, at + 4)
            : null;
    }

    private double? Multiplier(IReadOnlyList<Token> tokens, int at) =>
        at < tokens.Count && words.Find(tokens[at]) is { Part: NumberPart.Hundred or NumberPart.Thousand } times ? times.Value : null;

    // "thirty and" at the end of the message.
    private HeardNumber CutOff(IReadOnlyList<Token> tokens, HeardNumber number) =>
        number.End == tokens.Count - 1 && words.Is(tokens[number.End], NumberPart.And) ? number with { Open = NumberOpen.Value } : number;

    // Two numbers with nothing between them are no number: "36 38", "ten twelve", "thirty six thirty eight".
    private HeardNumber RunTogether(IReadOnlyList<Token> tokens, HeardNumber number)
    {
        var end = number.End;
        while (end < tokens.Count && (tokens[end].Kind == TokenKind.Number || words.Begins(tokens[end])))
        {
            end++;
        }

        return end == number.End ? number : number with { End = end, Open = NumberOpen.Value };
    }
}
