using System.Collections.Frozen;
using System.Globalization;
using Microsoft.Recognizers.Text;
using Microsoft.Recognizers.Text.Number;

namespace Assistant.Dialogue.Understanding.Numbers;

/// <summary>
/// The number recogniser for English cardinals and fractions. It gives the lexicon's number words their values and settles the
/// rare forms; it knows nothing of "one seventeen", which is the trade's own.
/// </summary>
internal static class CardinalRecogniser
{
    /// <summary>More than this is no number that a reading is made of, and long texts make the recogniser slow.</summary>
    private const int LongestText = 80;

    /// <summary>
    /// What the recogniser says of the words every lexicon has (a test holds the two alike): making it ready takes a tenth of a second, which
    /// every start would wait for.
    /// </summary>
    private static readonly FrozenDictionary<string, double> Common = new Dictionary<string, double>
    {
        ["zero"] = 0, ["one"] = 1, ["two"] = 2, ["three"] = 3, ["four"] = 4, ["five"] = 5, ["six"] = 6, ["seven"] = 7, ["eight"] = 8, ["nine"] = 9,
        ["ten"] = 10, ["eleven"] = 11, ["twelve"] = 12, ["thirteen"] = 13, ["fourteen"] = 14, ["fifteen"] = 15, ["sixteen"] = 16, ["seventeen"] = 17, ["eighteen"] = 18, ["nineteen"] = 19,
        ["twenty"] = 20, ["thirty"] = 30, ["forty"] = 40, ["fifty"] = 50, ["sixty"] = 60, ["seventy"] = 70, ["eighty"] = 80, ["ninety"] = 90, ["hundred"] = 100, ["thousand"] = 1000,
        ["one half"] = 0.5, ["one quarter"] = 0.25,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The value of a text that is one number and nothing else, or null.</summary>
    public static double? ValueOf(string text)
    {
        if (Common.TryGetValue(text, out var common))
        {
            return common;
        }

        if (text.Length > LongestText)
        {
            return null;
        }

        var found = NumberRecognizer.RecognizeNumber(text, Culture.English);
        return found is [{ } only] && only.Start == 0 && only.End == text.Length - 1
            && double.TryParse(only.Resolution["value"]?.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
    }
}
