using System.Collections.Immutable;
using System.Globalization;

namespace Assistant.Voice.Dialogues;

/// <summary>Takes digits said one by one: "one one seven go", "minus eight point five".</summary>
internal static class SpelledNumber
{
    private static readonly ImmutableDictionary<string, char> Digits = new Dictionary<string, char>
    {
        ["zero"] = '0', ["oh"] = '0', ["nought"] = '0', ["one"] = '1', ["two"] = '2', ["three"] = '3', ["four"] = '4', ["five"] = '5',
        ["six"] = '6', ["seven"] = '7', ["eight"] = '8', ["nine"] = '9', ["niner"] = '9', ["point"] = '.', ["minus"] = '-', ["negative"] = '-',
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private const int MostDigits = 9;

    public static bool IsDigit(string word) => Digits.TryGetValue(word, out var digit) && char.IsAsciiDigit(digit);

    /// <summary>The digits so far and those just said, or null where they make no number.</summary>
    public static string? Append(string sofar, IEnumerable<string> words)
    {
        var text = sofar + string.Concat(words.Where(Digits.ContainsKey).Select(w => Digits[w]));
        var isNumber = text.Length <= MostDigits && text.LastIndexOf('-') <= 0 && text.Count(c => c == '.') <= 1;
        return isNumber ? text : null;
    }

    public static double? Value(string digits) =>
        digits.Any(char.IsAsciiDigit) && double.TryParse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;
}
