using System.Globalization;
using System.Text.RegularExpressions;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>The lines and words of the corpus as raw material for made-up messages, and the numbers a text can be said to hold.</summary>
internal static partial class Corpus
{
    // The lexicon's own words for numbers with their misspellings, and the signs and short words that stand for one.
    private static readonly string[] Spoken =
        [.. File.ReadLines(Path.Combine(LexiconFiles.Root, "dialogs", "lexicon", "numbers.yaml")).Where(l => !l.StartsWith('#')).SelectMany(l => NumberWord().Matches(l)).Select(m => m.Value),
         "to", "oh", "½", "/", "a ", "an ", "&"];

    public static string[] Lines { get; } =
        [.. Directory.GetFiles(Path.Combine(LexiconFiles.Root, "tests", "data", "utterances"), "*.tsv", SearchOption.AllDirectories).SelectMany(File.ReadAllLines).Select(l => l.Split('\t')).Where(f => f.Length == 5).Select(f => f[3]).Distinct()];

    public static string[] Words { get; } = [.. Lines.SelectMany(l => l.Split(' ')).Where(w => w.Length > 0).Distinct()];

    /// <summary>A set that answers whether a value can be made of the text's digits; where numbers are also said in words, any value can.</summary>
    public static IReadOnlySet<double> NumbersIn(string text)
    {
        var lower = text.ToLowerInvariant();
        return Spoken.Any(w => lower.Contains(w, StringComparison.Ordinal)) || LetterForNought().IsMatch(lower) ? new AnyNumber() : new TypedNumbers([.. Typed().Matches(text).SelectMany(m => Values(m.Value))]);
    }

    // "22,5" may be 22.5 or 225 thousandths apart; a k behind makes thousands, ounces sixteenths of a pound more.
    private static IEnumerable<double> Values(string typed)
    {
        foreach (var text in new[] { typed, "0" + typed, typed.Replace(",", "", StringComparison.Ordinal), typed.Replace(',', '.') })
        {
            if (double.TryParse(text.TrimEnd('.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
            {
                yield return value;
                yield return value * 1000;
            }
        }
    }

    [GeneratedRegex("[a-z]{3,}")]
    private static partial Regex NumberWord();

    // "1o5", the letter typed for the digit.
    [GeneratedRegex("[0-9]o|o[0-9]")]
    private static partial Regex LetterForNought();

    [GeneratedRegex(@"[0-9.,]*[0-9]")]
    private static partial Regex Typed();

    private sealed class AnyNumber : HashSet<double>, IReadOnlySet<double>
    {
        bool IReadOnlySet<double>.Contains(double item) => true;
    }

    private sealed class TypedNumbers(HashSet<double> numbers) : HashSet<double>(numbers), IReadOnlySet<double>
    {
        bool IReadOnlySet<double>.Contains(double item) =>
            this.Any(n => Math.Abs(n - item) < 1e-9 || this.Any(o => Math.Abs(n + (o / 16) - item) < 1e-9));
    }
}
