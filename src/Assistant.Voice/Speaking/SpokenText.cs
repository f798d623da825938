using System.Globalization;
using System.Text.RegularExpressions;

namespace Assistant.Voice.Speaking;

/// <summary>Turns a written sentence into one for the ear: units as words, dates as days, designations letter by letter, no brackets.</summary>
public static partial class SpokenText
{
    // Longest first, so that "psia" is not taken for "psi"; each stands behind a number.
    private static readonly (string Written, string Spoken)[] Units =
    [
        ("°F", "degrees"), ("°C", "degrees"), ("degF", "degrees"), ("degC", "degrees"), ("inHg vacuum", "inches of vacuum"), ("psig", "P S I"), ("psia", "P S I absolute"), ("psi", "P S I"),
        ("kPaa", "kilopascals absolute"), ("kPa", "kilopascals"), ("MPa", "megapascals"), ("Pa", "pascals"), ("bara", "bar absolute"), ("K", "kelvin"), ("lb", "pounds"), ("oz", "ounces"), ("kg", "kilos"),
        ("g", "grams"), ("micron", "microns"), ("mTorr", "millitorr"), ("Torr", "torr"), ("mbar", "millibars"), ("A", "amps"), ("V", "volts"), ("ft3", "cubic feet"), ("ft", "feet"),
        ("m3", "cubic metres"), ("mm", "millimetres"), ("m", "metres"), ("in", "inches"), ("l", "litres"), ("min", "minutes"), ("s", "seconds"), ("h", "hours"), ("d", "days"), ("%", "percent"),
    ];

    private static readonly Dictionary<string, string> Spoken = Units.ToDictionary(u => u.Written, u => u.Spoken, StringComparer.Ordinal);

    public static string Of(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        // Where both scales stand in one sentence, bare degrees would say neither.
        var both = written.Contains("°F", StringComparison.Ordinal) && written.Contains("°C", StringComparison.Ordinal);
        var text = Unit().Replace(Date().Replace(written, Day), m => $"{m.Groups["number"].Value} {Spoken[m.Groups["unit"].Value]}{(both ? Scale(m.Groups["unit"].Value) : "")}");
        text = One().Replace(text, "1 ${unit}");
        text = Named().Replace(text, m => m.Value switch { "degF" or "°F" => "Fahrenheit", "degC" or "°C" => "Celsius", "WC" => "water capacity", var unit => Spoken[unit] });
        text = Negative().Replace(text, "minus ");
        text = Designation().Replace(text, m => string.Join(' ', m.Value.AsEnumerable()));
        text = Initials().Replace(text, m => string.Join(' ', m.Value.AsEnumerable()));
        text = Quote().Replace(text, "");
        text = Bracket().Replace(text, ", ").Replace(" = ", " is ", StringComparison.Ordinal);
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

    private static string Scale(string unit) => unit switch { "°F" => " Fahrenheit", "°C" => " Celsius", _ => "" };

    // The months are the language's, not the machine's.
    private static string Day(Match written) => DateOnly.TryParseExact(written.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
        ? date.ToString("MMMM d, yyyy", CultureInfo.InvariantCulture)
        : written.Value;

    [GeneratedRegex(@"\b\d{4}-\d{2}-\d{2}\b")]
    private static partial Regex Date();

    [GeneratedRegex(@"(?<number>(?<!\bR\d*)\d)\s?(?<unit>°F|°C|degF|degC|inHg vacuum|psig|psia|psi|kPaa|kPa|MPa|Pa|bara|micron|mTorr|Torr|mbar|min|mm|m3|ft3|ft|lb|oz|kg|in|g|K|A|V|m|l|s|h|d|%)(?![\w°])")]
    private static partial Regex Unit();

    // A unit or a stamp named without a number.
    [GeneratedRegex(@"(?<!\w)(degF|degC|°F|°C|psig|psia|psi|inHg vacuum|kPaa|kPa|MPa|mTorr|WC)(?!\w)")]
    private static partial Regex Named();

    // "1 pounds".
    [GeneratedRegex(@"(?<![\d.] ?)1 (?<unit>pound|ounce|kilo|gram|minute|second|hour|day|degree|amp|volt|micron|litre|metre)s\b")]
    private static partial Regex One();

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
