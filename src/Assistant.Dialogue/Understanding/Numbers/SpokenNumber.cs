using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>
/// Reads a number said in words from one place on: the English cardinals, and the trade's "one seventeen" (117), "two oh one"
/// (201), "two twenty five" (225), "fifteen hundred", digits one by one, "point five", "and a half".
/// </summary>
internal ref partial struct SpokenNumber(IReadOnlyList<Token> tokens, NumberVocabulary words, int start, Func<int, bool> isUnitAt)
{
    private readonly int begin = start;
    private int at = start;
    private bool open;

    public HeardNumber Read()
    {
        if (FractionAlone() is { } fraction)
        {
            return Heard(fraction);
        }

        double value = 0;
        if (!PointAhead())
        {
            if (Whole() is not { } whole)
            {
                return default;
            }

            value = whole;
        }

        value += Decimals() + FractionAfter();
        return Heard(value);
    }

    private readonly HeardNumber Heard(double value) => new(value, begin, at, open ? NumberOpen.Value : NumberOpen.No);

    private readonly NumberWord? Part(int index) => index < tokens.Count ? words.Find(tokens[index]) : null;

    private readonly bool Is(int index, NumberPart part) => Part(index)?.Part == part;

    // A digit word, or a homophone where only a digit can stand.
    private readonly double? Digit(int index, bool homophones)
    {
        if (Part(index) is not { } word)
        {
            return index < tokens.Count && SingleNumeral(tokens[index]) ? tokens[index].Value : null;
        }

        return word.Part == NumberPart.Digit || (homophones && word.Part == NumberPart.Homophone) ? word.Value : null;
    }

    private static bool SingleNumeral(Token token) =>
        token is { Kind: TokenKind.Number, Form: NumberForm.Plain, Value: >= 1 and <= 9 } && token.End - token.Start == 1;

    private readonly bool Nought(int index) =>
        Is(index, NumberPart.Zero) || Is(index, NumberPart.Oh) || (index < tokens.Count && tokens[index] is { Kind: TokenKind.Number, Value: 0, Form: NumberForm.Plain } zero && zero.End - zero.Start == 1);

    private readonly bool PointAhead() =>
        Is(at, NumberPart.Point) || ((Is(at, NumberPart.Oh) || Is(at, NumberPart.Zero)) && Is(at + 1, NumberPart.Point) && !Is(at, NumberPart.Zero));

    private double? Whole()
    {
        if (BelowThousand() is not { } value)
        {
            return null;
        }

        if (!Is(at, NumberPart.Thousand))
        {
            return value;
        }

        at++;
        value *= 1000;
        var before = at;
        if (Is(at, NumberPart.And))
        {
            at++;
        }

        if (BelowThousand() is { } rest && rest < 1000)
        {
            return value + rest;
        }

        at = before;
        return value;
    }

    private double? BelowThousand()
    {
        if (Hundreds() is { } hundreds)
        {
            return hundreds + AfterHundreds();
        }

        if (Part(at) is not { } first && !(at < tokens.Count && SingleNumeral(tokens[at])))
        {
            return null;
        }

        if (DigitRun() is { } run)
        {
            return run;
        }

        return BelowHundred();
    }

    // "a hundred", "two hundred", "fifteen hundred", "twenty five hundred", "a thousand".
    private double? Hundreds()
    {
        var (before, count) = (at, 1.0);
        if (Is(at, NumberPart.Article) && (Is(at + 1, NumberPart.Hundred) || Is(at + 1, NumberPart.Thousand)))
        {
            at++;
        }
        else if (!Is(at, NumberPart.Hundred))
        {
            var homophone = Digit(at, true) is { } digit && Is(at + 1, NumberPart.Hundred) ? digit : (double?)null;
            if (homophone is { } counted)
            {
                (count, at) = (counted, at + 1);
            }
            else if (BelowHundred() is { } said)
            {
                count = said;
            }
        }

        if (Is(at, NumberPart.Hundred))
        {
            at++;
            return count * 100;
        }

        if (at > before && count == 1.0 && Is(at, NumberPart.Thousand) && Is(before, NumberPart.Article))
        {
            return 1;
        }

        at = before;
        return null;
    }

    private double AfterHundreds()
    {
        var before = at;
        var joined = Is(at, NumberPart.And);
        if (joined)
        {
            at++;
        }

        if (BelowHundred() is { } rest && !Is(at, NumberPart.Hundred))
        {
            return rest;
        }

        at = before;
        if (joined && before + 1 == tokens.Count)
        {
            (open, at) = (true, before + 1);
        }

        return 0;
    }

    private double? BelowHundred()
    {
        if (Part(at) is not { } word)
        {
            return Digit(at, false) is { } numeral ? Advance(1, numeral) : null;
        }

        switch (word.Part)
        {
            case NumberPart.Zero or NumberPart.Teen or NumberPart.Digit:
                return Advance(1, word.Value);
            case NumberPart.Tens:
                if (Digit(at + 1, false) is { } digit)
                {
                    return Advance(2, word.Value + digit);
                }

                if (Is(at + 1, NumberPart.Homophone) && SettledAfter(at + 1))
                {
                    return Advance(2, word.Value + Part(at + 1)!.Value.Value);
                }

                open |= at + 2 == tokens.Count && Part(at + 1) is { LeavesOpen: true };
                return Advance(1, word.Value);
            default:
                return null;
        }
    }

    // A homophone at a number's end is a digit before a unit or a decimal; most also at the end of the message.
    private readonly bool SettledAfter(int index)
    {
        var after = index + 1;
        return isUnitAt(after) || (Is(after, NumberPart.Point) && after + 1 < tokens.Count)
            || (after == tokens.Count && Part(index) is { LeavesOpen: false });
    }

    // Hundreds said as digit + rest: "one seventeen", "two oh one", "one eighty five", "one two five".
    private double? DigitRun()
    {
        var opening = Digit(at, true);
        if (opening is null)
        {
            return null;
        }

        var isHomophone = Is(at, NumberPart.Homophone);
        if (isHomophone && !HomophoneOpens())
        {
            return null;
        }

        var hundreds = opening.Value * 100;
        if (Nought(at + 1))
        {
            var last = Digit(at + 2, true) ?? (Nought(at + 2) ? 0 : null);
            if (last is { } units && (!Is(at + 2, NumberPart.Homophone) || SettledAfter(at + 2) || at + 3 == tokens.Count))
            {
                return Advance(3, hundreds + units);
            }

            if (isHomophone || Is(at + 1, NumberPart.Zero))
            {
                open = true;
            }

            // "two oh" is cut off; "two, oh well" is two.
            open |= at + 2 == tokens.Count;
            return Advance(open ? 2 : 1, opening.Value);
        }

        switch (Part(at + 1)?.Part)
        {
            case NumberPart.Teen:
                return Advance(2, hundreds + Part(at + 1)!.Value.Value);
            case NumberPart.Tens:
                at++;
                return hundreds + BelowHundred();
        }

        if (Digit(at + 1, false) is { } second)
        {
            if (Digit(at + 2, true) is { } third && !(Is(at + 2, NumberPart.Homophone) && !SettledAfter(at + 2)) || Nought(at + 2))
            {
                return Advance(3, hundreds + (second * 10) + (Digit(at + 2, true) ?? 0));
            }

            open = true;
            return Advance(2, (opening.Value * 10) + second);
        }

        return isHomophone && !isUnitAt(at + 1) && !DecimalFollows() ? null : Advance(1, opening.Value);
    }

    // "won point six", "won and a half": a digit, since no sentence goes on so.
    private readonly bool DecimalFollows() =>
        Is(at + 1, NumberPart.Point)
        || (Is(at + 1, NumberPart.And) && (Is(at + 2, NumberPart.Fraction) || (Is(at + 2, NumberPart.Article) && Is(at + 3, NumberPart.Fraction))));

    // "to oh one", "won seventeen" at the very beginning; "for twenty", "to ten" only where nothing else is said.
    private readonly bool HomophoneOpens()
    {
        if (isUnitAt(at + 1))
        {
            return true;
        }

        var first = at == 0 || tokens[at - 1].EndsClause || words.Find(tokens[at - 1]) is not null;
        return (Nought(at + 1) && Digit(at + 2, true) is not null) || ((first || Part(at) is { Value: 8 or 1 }) && DecimalFollows())
            ? true
            : first && Part(at) is { Value: 8 or 1 } && Part(at + 1)?.Part is NumberPart.Teen or NumberPart.Tens;
    }

    private double Advance(int count, double value)
    {
        at += count;
        return value;
    }
}
