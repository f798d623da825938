using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Numbers;
using Assistant.Dialogue.Understanding.Text;
using Assistant.Dialogue.Understanding.Units;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Finds a whole said number at a token: its sign, its unit before or after, pounds with ounces, "below zero".</summary>
internal sealed class NumberFinder(Lexicon lexicon)
{
    private readonly UnitReader units = new(lexicon);

    /// <summary>The number that begins at a token, with the token after it; null where none does.</summary>
    /// <param name="inOut">"in" and "out" name facts in this message and are no inches.</param>
    public (SaidNumber Number, int End)? Find(string text, IReadOnlyList<Token> tokens, int at, bool inOut)
    {
        var sign = Sign(tokens, at);
        var from = at + sign.Length;
        if (from >= tokens.Count)
        {
            return null;
        }

        if (sign.Length == 0 && UnitBefore(tokens, at) is { } unit && Bare(text, tokens, unit.End) is { Found: true } led
            && units.Read(tokens, led.End).Units.Count == 0)
        {
            return (Said(led, unit.Units), led.End);
        }

        var heard = Bare(text, tokens, from);
        if (!heard.Found && lexicon.Numbers.Vocabulary.Is(tokens[from], NumberPart.Article) && units.CountsByArticle(tokens, from + 1))
        {
            heard = new(1, from, from + 1);
        }

        if (!heard.Found && sign.Negative && lexicon.Numbers.Vocabulary.Find(tokens[from]) is { Part: NumberPart.Homophone } homophone)
        {
            heard = new(homophone.Value, from, from + 1);
        }

        if (!heard.Found)
        {
            return null;
        }

        var (number, end) = WithUnit(text, tokens, heard, inOut);
        if (sign.Open || (sign.Negative && number.Value < 0))
        {
            number = number with { Open = Clarify.Sign };
        }

        return (sign.Negative ? number with { Value = -Math.Abs(number.Value) } : number, end);
    }

    private HeardNumber Bare(string text, IReadOnlyList<Token> tokens, int at) =>
        at < tokens.Count ? lexicon.NumberReader.Read(text, tokens, at, i => units.Stands(tokens, i)) : default;

    private static SaidNumber Said(HeardNumber heard, IReadOnlyList<UnitWord> units) => new(heard.Value, units)
    {
        Open = heard.Open == NumberOpen.Value ? Clarify.Value : null,
        Comma = heard.Open == NumberOpen.Comma,
        Joined = heard.Open == NumberOpen.Joined,
    };

    private (SaidNumber, int) WithUnit(string text, IReadOnlyList<Token> tokens, HeardNumber heard, bool inOut)
    {
        var end = heard.End;
        var kilo = end < tokens.Count && lexicon.Units.Thousands.Contains(tokens[end].Word);
        var afterKilo = kilo ? units.Read(tokens, end + 1) : ([], end);
        IReadOnlyList<UnitWord> said;
        if (afterKilo.Units.Count > 0)
        {
            heard = heard with { Value = heard.Value * 1000 };
            (said, end) = afterKilo;
            kilo = false;
        }
        else
        {
            (said, end) = units.Read(tokens, end);
            if (said.Count == 0 && lexicon.Filling.Fillers.LongestAt(tokens, end, out _) is var filler and > 0 && units.Read(tokens, end + filler) is { Units.Count: > 0 } after)
            {
                (said, end) = after;
            }

            if (inOut && said.Count > 0 && said.All(u => u.Everyday))
            {
                (said, end) = ([], heard.End);
            }
        }

        var number = Said(heard, said) with { Kilo = kilo };
        if (said.Count > 0 && FractionAfterUnit(text, tokens, end) is { } fraction)
        {
            number = number with { Value = number.Value + fraction.Value };
            end = fraction.End;
        }

        return Ounces(text, tokens, number, end) ?? BelowZero(tokens, number, end);
    }

    // "a pound and a half", "two pounds and a quarter".
    private HeardNumber? FractionAfterUnit(string text, IReadOnlyList<Token> tokens, int at)
    {
        var words = lexicon.Numbers.Vocabulary;
        if (at + 1 >= tokens.Count || !words.Is(tokens[at], NumberPart.And)
            || !(words.Is(tokens[at + 1], NumberPart.Article) || words.Is(tokens[at + 1], NumberPart.Fraction)))
        {
            return null;
        }

        var fraction = Bare(text, tokens, at + 1);
        return fraction.Found && fraction.Value < 1 && units.Read(tokens, fraction.End).Units.Count == 0 ? fraction : null;
    }

    // "2 lb 6 oz", "two pounds and six ounces", "two pounds six".
    private (SaidNumber, int)? Ounces(string text, IReadOnlyList<Token> tokens, SaidNumber pounds, int at)
    {
        if (!pounds.Units.Any(u => u.Unit == UnitOfMeasure.Pound) || pounds.Open is not null)
        {
            return null;
        }

        var joined = at < tokens.Count && (lexicon.Numbers.Vocabulary.Is(tokens[at], NumberPart.And) || tokens[at].Kind == TokenKind.Pause);
        var ounces = Bare(text, tokens, joined ? at + 1 : at);
        if (!ounces.Found)
        {
            return null;
        }

        var (said, end) = units.Read(tokens, ounces.End);
        var isSaid = said.Any(u => u.Unit == UnitOfMeasure.Ounce);
        if (!isSaid && (said.Count > 0 || joined || ounces.Value is >= 16 or < 0))
        {
            return null;
        }

        var open = ounces.Open != NumberOpen.No || ounces.Value >= 16 || pounds.Value != Math.Floor(pounds.Value) ? Clarify.Value : (Clarify?)null;
        var poundsOnly = pounds.Units.Where(u => u.Unit == UnitOfMeasure.Pound).ToArray();
        return (pounds with
        {
            Value = pounds.Value + (ounces.Value / 16),
            Units = isSaid ? poundsOnly : pounds.Units,
            BareOunces = !isSaid,
            Open = open,
        }, end);
    }

    // "ten below zero fahrenheit", "5 degrees below".
    private (SaidNumber, int) BelowZero(IReadOnlyList<Token> tokens, SaidNumber number, int at)
    {
        var length = lexicon.Numbers.BelowZero.LongestAt(tokens, at, out _);
        if (length == 0 || lexicon.Cues.Cues.LongestAt(tokens, at, out _) > length || NumberFollows(tokens, at + length))
        {
            return (number, at);
        }

        var end = at + length;
        if (number.Units.Count == 0)
        {
            var (said, after) = units.Read(tokens, end);
            number = number with { Units = said };
            end = after;
        }

        return (number with { Value = -Math.Abs(number.Value) }, end);
    }

    private bool NumberFollows(IReadOnlyList<Token> tokens, int at) =>
        at < tokens.Count && (tokens[at].Kind == TokenKind.Number || lexicon.Numbers.Vocabulary.Begins(tokens[at]));

    private (IReadOnlyList<UnitWord> Units, int End)? UnitBefore(IReadOnlyList<Token> tokens, int at)
    {
        var (said, end) = units.Read(tokens, at);
        return said.Any(u => !u.Everyday) && end < tokens.Count && !tokens[at].EndsClause ? (said, end) : null;
    }

    private (int Length, bool Negative, bool Open) Sign(IReadOnlyList<Token> tokens, int at)
    {
        var token = tokens[at];
        if (lexicon.Numbers.Minus.Contains(token.Word))
        {
            var dashed = at + 1 < tokens.Count && tokens[at + 1].IsWord(lexicon.Signs.Dash);
            return (dashed ? 2 : 1, true, dashed && tokens[at + 1].SpaceBefore);
        }

        if (lexicon.Numbers.Plus.Contains(token.Word) || token.IsWord(lexicon.Signs.Plus))
        {
            return (1, false, false);
        }

        if (!token.IsWord(lexicon.Signs.Dash) || at + 1 >= tokens.Count)
        {
            return default;
        }

        // "setpoint - 10", "suction-22": a minus or a mere stroke is not said.
        var stroke = (tokens[at + 1].SpaceBefore || !token.SpaceBefore) && FollowsName(tokens, at);
        return (1, true, stroke);
    }

    private bool FollowsName(IReadOnlyList<Token> tokens, int at)
    {
        for (var start = at - 1; start >= 0 && start >= at - 4; start--)
        {
            if (lexicon.Facts.Names.LongestAt(tokens, start, out _) == at - start)
            {
                return true;
            }
        }

        return false;
    }
}
