namespace Assistant.Dialogue.Understanding.Numbers;

/// <content>What is said behind the whole number, or instead of it: "point five", "and a half", "three quarters".</content>
internal ref partial struct SpokenNumber
{
    private double Decimals()
    {
        if (Is(at, NumberPart.Oh) && Is(at + 1, NumberPart.Point))
        {
            at++;
        }

        if (!Is(at, NumberPart.Point))
        {
            return 0;
        }

        at++;
        if (Part(at) is { Part: NumberPart.Tens or NumberPart.Teen } big)
        {
            var before = at;
            var pair = BelowHundred() ?? big.Value;
            return at > before ? pair / 100 : 0;
        }

        var (value, scale) = (0.0, 0.1);
        var first = at;
        while (at < tokens.Count && (Nought(at) || Digit(at, true) is not null))
        {
            if (Is(at, NumberPart.Homophone) && at > first && !SettledAfter(at))
            {
                break;
            }

            value += (Digit(at, true) ?? 0) * scale;
            scale /= 10;
            at++;
        }

        open |= at == first;
        return Math.Round(value, 9);
    }

    // "half a pound", "three quarters of a pound", "a quarter".
    private double? FractionAlone()
    {
        var count = 1.0;
        var next = at;
        if (Is(next, NumberPart.Article))
        {
            next++;
        }
        else if (Part(next) is { Part: NumberPart.Digit } digit && Is(next + 1, NumberPart.Fraction))
        {
            (count, next) = (digit.Value, next + 1);
        }

        if (Part(next) is not { Part: NumberPart.Fraction } fraction)
        {
            return null;
        }

        at = next + 1;
        var unit = Is(at, NumberPart.Of) ? at + 1 : at;
        if (Is(unit, NumberPart.Article) && isUnitAt(unit + 1))
        {
            at = unit + 1;
        }

        return count * fraction.Value;
    }

    private double FractionAfter()
    {
        if (!Is(at, NumberPart.And))
        {
            return 0;
        }

        var before = at++;
        if (Part(at) is { Part: NumberPart.Article or NumberPart.Digit or NumberPart.Fraction } && FractionAlone() is { } fraction)
        {
            return fraction;
        }

        at = before;
        return 0;
    }
}
