namespace Assistant.Records.People;

/// <summary>
/// Codes that can be read out over a noisy line: no two signs that look or sound alike (no O and 0, no B D E P T, no M and N, no
/// 5 and 9), digits said one at a time.
/// </summary>
public static class SpokenCode
{
    /// <summary>Fourteen signs: eight of them are one of 1.5 thousand million codes.</summary>
    public const string Signs = "2346789KLMRWXY";

    private const string Digits = "2346789";
    private const int Length = 8;
    private const int DigitsOfAVisit = 4;

    /// <summary>A code for enrolment, in two groups: "K4MX-92LR".</summary>
    /// <param name="below">A random number from 0 to below its argument.</param>
    public static string ForEnrolment(Func<int, int> below)
    {
        var code = Draw(Signs, Length, below);
        return $"{code[..4]}-{code[4..]}";
    }

    /// <summary>A code for a visit: four digits, more where so many are in use that four no longer do.</summary>
    public static string ForVisit(Func<int, int> below, IReadOnlySet<string> taken)
    {
        for (var length = DigitsOfAVisit; ; length++)
        {
            for (var attempt = 0; attempt < 50; attempt++)
            {
                if (Draw(Digits, length, below) is var code && !taken.Contains(code))
                {
                    return code;
                }
            }
        }
    }

    /// <summary>The code as it was drawn, however it was typed: case, spaces and dashes do not count. Null where it can be none.</summary>
    public static string? Read(string text)
    {
        var signs = string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '-')).ToUpperInvariant();
        return signs.Length == Length && signs.All(Signs.Contains) ? $"{signs[..4]}-{signs[4..]}" : null;
    }

    private static string Draw(string from, int length, Func<int, int> below) =>
        string.Create(length, (from, below), static (span, source) =>
        {
            for (var i = 0; i < span.Length; i++)
            {
                span[i] = source.from[source.below(source.from.Length)];
            }
        });
}
