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

    /// <summary>The value of a text that is one number and nothing else, or null.</summary>
    public static double? ValueOf(string text)
    {
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
