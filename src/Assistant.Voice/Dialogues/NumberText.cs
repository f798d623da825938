using System.Globalization;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>A number as it is sent on, read back and told from the one that sounds like it.</summary>
internal static class NumberText
{
    // The stress is on another syllable, and a fan swallows the last consonant.
    private static readonly (string Teen, string Ty)[] Alike =
        [("thirteen", "thirty"), ("fourteen", "forty"), ("fifteen", "fifty"), ("sixteen", "sixty"), ("seventeen", "seventy"), ("eighteen", "eighty"), ("nineteen", "ninety")];

    /// <summary>Such as "-8.5 degF": exact, and one thing only to the understanding.</summary>
    public static string Sent(Reading reading) => $"{Number(reading)} {reading.Unit.Symbol}";

    public static string Number(Reading reading) => reading.Value.ToString("0.###", CultureInfo.InvariantCulture);

    public static string Digits(Reading reading) => SpokenText.Digits(Number(reading));

    /// <summary>"P S I", "degrees Fahrenheit": the scale is named, since a number is taken in it.</summary>
    public static string Unit(UnitOfMeasure unit) => unit.Symbol switch
    {
        "degF" => "degrees Fahrenheit",
        "degC" => "degrees Celsius",
        _ => SpokenText.Unit(unit.Symbol),
    };

    /// <summary>The same words with the last teen said as its ty, or the other way round; null where nothing is so alike.</summary>
    public static string? SoundsLike(string words)
    {
        var said = words.Split(' ');
        for (var i = said.Length - 1; i >= 0; i--)
        {
            foreach (var (teen, ty) in Alike)
            {
                // "thirty six" can not be "thirteen six", but "thirty" before a point or a unit can be "thirteen".
                var isLast = i + 1 == said.Length || said[i + 1] is not ("one" or "two" or "three" or "four" or "five" or "six" or "seven" or "eight" or "nine");
                if (isLast && (said[i] == teen || said[i] == ty))
                {
                    return string.Join(' ', [.. said[..i], said[i] == teen ? ty : teen, .. said[(i + 1)..]]);
                }
            }
        }

        return null;
    }

    /// <summary>Just the number's words: "one seventeen" of "one seventeen p s i".</summary>
    public static string WithoutUnit(string words, Func<string, bool> isNumberWord) => string.Join(' ', words.Split(' ').TakeWhile(isNumberWord));
}
