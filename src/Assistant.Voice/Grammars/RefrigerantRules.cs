using System.Globalization;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Refrigerants;

namespace Assistant.Voice.Grammars;

/// <summary>The ways to say a refrigerant's designation: "R four four eight A", "four oh four A", "twenty two", "one thirty four A".</summary>
internal sealed class RefrigerantRules(LexiconPhrases lexicon, PronunciationDictionary sounds)
{
    public string Expansion => string.Join(" | ", RefrigerantLibrary.All.SelectMany(r => Ways(r.Designation)).Distinct().Where(sounds.CanBeHeard).Select(way => $"[r] {way}"));

    private IEnumerable<string> Ways(string designation)
    {
        var number = new string([.. designation.Skip(1).TakeWhile(char.IsAsciiDigit)]);
        var letters = designation[(1 + number.Length)..].ToLowerInvariant();
        if (number.Length == 0 || !letters.All(char.IsAsciiLetter))
        {
            yield break;
        }

        var tail = string.Concat(letters.Select(l => " " + l));
        yield return string.Join(' ', number.Select(d => lexicon.Cardinals[d - '0'])) + tail;
        if (number.Contains('0', StringComparison.Ordinal))
        {
            yield return string.Join(' ', number.Select(d => d == '0' ? "oh" : lexicon.Cardinals[d - '0'])) + tail;
        }

        // "twenty two", "one thirty four": the last two digits as one number.
        if (number.Length is 2 or 3 && Two(number[^2..]) is { } two)
        {
            yield return string.Join(' ', number[..^2].Select(d => lexicon.Cardinals[d - '0']).Append(two)) + tail;
        }
    }

    private string? Two(string digits)
    {
        var value = int.Parse(digits, CultureInfo.InvariantCulture);
        return lexicon.Cardinals.TryGetValue(value, out var word) && value >= 10 ? word
            : value > 20 ? $"{lexicon.Cardinals[value / 10 * 10]} {lexicon.Cardinals[value % 10]}"
            : null;
    }
}
