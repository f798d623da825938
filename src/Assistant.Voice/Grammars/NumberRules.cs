using Assistant.Dialogue.Understanding.Lexicons;

namespace Assistant.Voice.Grammars;

/// <summary>
/// The ways to say a number of a span, as a JSGF expansion over the lexicon's cardinals: "one hundred seventeen", "one seventeen",
/// "one oh five", "one one seven", "thirty four hundred", each with a decimal where the span has places. No number far outside the span
/// can be heard, and the finer check is the span's own.
/// </summary>
internal sealed class NumberRules(LexiconPhrases lexicon, PronunciationDictionary sounds)
{
    private string Word(int value) => lexicon.Cardinals[value];

    /// <summary>Any of the ten digits, with "oh" for nought.</summary>
    public string Digit => $"({Digits(0, 9)} | {Oh})";

    private string Oh => Any(lexicon.NumberPart("nought-between-digits"));

    private string Point => Any(lexicon.NumberPart("point"));

    public string For(NumberSpan span)
    {
        var whole = span.To switch
        {
            < 100 => Below100(span.To),
            < 1000 => $"({Below100(99)} | {Hundreds(span.To / 100)})",
            _ => $"({Below100(99)} | {Hundreds(9)} | {Thousands(span.To)})",
        };
        var decimals = span.Places switch
        {
            0 => "",
            1 => $" [{Point} {Digit}]",
            _ => $" [{Point} {Digit} [{Digit}]]",
        };
        var number = $"({whole}{decimals})";
        return span.From < 0 ? $"([{Any(lexicon.NumberPart("minus").Take(2))}] {number})" : number;
    }

    private string Digits(int from, int to) => string.Join(" | ", Enumerable.Range(from, to - from + 1).Select(Word));

    private string Teens(int to) => string.Join(" | ", Enumerable.Range(10, Math.Min(to, 19) - 9).Select(Word));

    private string Tens(int to) => string.Join(" | ", Enumerable.Range(2, (to / 10) - 1).Select(ten => Word(ten * 10)));

    private string Below100(int to) => to switch
    {
        < 10 => $"({Digits(0, to)})",
        < 20 => $"({Digits(0, 9)} | {Teens(to)})",
        _ => $"({Digits(0, 9)} | {Teens(19)} | ({Tens(to)}) [{Digits(1, 9)}])",
    };

    private string Hundreds(int most)
    {
        var lead = $"({Digits(1, most)})";
        var rest = $"({Teens(19)} | ({Tens(99)}) [{Digits(1, 9)}])";
        return $"(({lead} | {Any(lexicon.NumberPart("articles").Take(1))}) {Word(100)} [[{Any(lexicon.NumberPart("and").Take(1))}] ({Digits(1, 9)} | {rest})] | {lead} {rest} | {lead} {Digit} {Digit})";
    }

    private string Thousands(int to)
    {
        var tens = to < 2000 ? "" : $" | ({Tens(Math.Min(to / 100, 99))}) [{Digits(1, 9)}]";
        var hundreds = $"({Teens(19)}{tens}) {Word(100)}";
        var lead = Below100(Math.Min(to / 1000, 99));
        return $"({hundreds} | {lead} {Word(1000)} [({Digits(1, 9)}) {Word(100)}])";
    }

    private string Any(IEnumerable<string> words) => "(" + string.Join(" | ", words.Where(sounds.CanBeHeard)) + ")";
}
