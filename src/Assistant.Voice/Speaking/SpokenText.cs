using System.Text.RegularExpressions;

namespace Assistant.Voice.Speaking;

/// <summary>Turns a written sentence into one for the ear: units as words, designations letter by letter, no brackets.</summary>
public static partial class SpokenText
{
    // Longest first, so that "psia" is not taken for "psi"; each stands behind a number.
    private static readonly (string Written, string Spoken)[] Units =
    [
        ("°F", "degrees"), ("°C", "degrees"), ("degF", "degrees"), ("degC", "degrees"), ("inHg vacuum", "inches of vacuum"), ("psig", "P S I"), ("psia", "P S I absolute"),
        ("kPaa", "kilopascals absolute"), ("kPa", "kilopascals"), ("MPa", "megapascals"), ("Pa", "pascals"), ("bara", "bar absolute"), ("K", "kelvin"), ("lb", "pounds"), ("oz", "ounces"), ("kg", "kilos"),
        ("g", "grams"), ("mTorr", "millitorr"), ("Torr", "torr"), ("mbar", "millibars"), ("A", "amps"), ("V", "volts"), ("ft3", "cubic feet"), ("ft", "feet"),
        ("m3", "cubic metres"), ("mm", "millimetres"), ("m", "metres"), ("in", "inches"), ("l", "litres"), ("min", "minutes"), ("s", "seconds"), ("h", "hours"), ("d", "days"), ("%", "percent"),
    ];

    private static readonly Dictionary<string, string> Spoken = Units.ToDictionary(u => u.Written, u => u.Spoken, StringComparer.Ordinal);

    public static string Of(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var text = Unit().Replace(written, m => $"{m.Groups["number"].Value} {Spoken[m.Groups["unit"].Value]}");
        text = Negative().Replace(text, "minus ");
        text = Designation().Replace(text, m => string.Join(' ', m.Value.AsEnumerable()));
        text = Initials().Replace(text, m => string.Join(' ', m.Value.AsEnumerable()));
        text = Quote().Replace(text, "");
        text = Bracket().Replace(text, ", ");
        return Loose().Replace(Blank().Replace(text, " "), "").Trim();
    }

    /// <summary>A unit as it is said behind a number; the symbol itself where it needs no other word ("bar").</summary>
    public static string Unit(string symbol) => Spoken.GetValueOrDefault(symbol, symbol);

    /// <summary>A number digit by digit: "1 1 7", "minus 8 point 5".</summary>
    public static string Digits(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return string.Join(' ', number.Select(c => c switch { '-' => "minus", '.' => "point", _ => c.ToString() }));
    }

    [GeneratedRegex(@"(?<number>(?<!\bR\d*)\d)\s?(?<unit>°F|°C|degF|degC|inHg vacuum|psig|psia|kPaa|kPa|MPa|Pa|bara|mTorr|Torr|mbar|min|mm|m3|ft3|ft|lb|oz|kg|in|g|K|A|V|m|l|s|h|d|%)(?![\w°])")]
    private static partial Regex Unit();

    [GeneratedRegex(@"(?<![\w.])-(?=\d)")]
    private static partial Regex Negative();

    // R448A, R600a: letter by letter and digit by digit.
    [GeneratedRegex(@"\bR\d{2,4}[A-Za-z]{0,2}\b")]
    private static partial Regex Designation();

    [GeneratedRegex(@"\b(TXV|EEV|TD|SST|SCT|CO2|PSI)\b")]
    private static partial Regex Initials();

    [GeneratedRegex("[\"“”]")]
    private static partial Regex Quote();

    [GeneratedRegex(@"\s*[()\[\]/]\s*")]
    private static partial Regex Bracket();

    // A comma or blank left before another mark.
    [GeneratedRegex(@",? (?=[.,;:?!])")]
    private static partial Regex Loose();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
