using System.Globalization;

namespace Assistant.Dialogue.Understanding.Text;

/// <summary>
/// What a run of digits, points and commas is worth. A comma before one or two digits is a decimal comma; before exactly
/// three it parts thousands; anything that could be read two ways is malformed.
/// </summary>
internal static class TypedNumber
{
    private const int LongestRun = 15;

    public static (double Value, NumberForm Form) Read(ReadOnlySpan<char> run)
    {
        var commas = run.Count(',');
        var points = run.Count('.');
        if (run.Length > LongestRun || points > 1)
        {
            return (0, NumberForm.Malformed);
        }

        if (commas == 0)
        {
            return (Plain(run), NumberForm.Plain);
        }

        var firstComma = run.IndexOf(',');
        var point = run.IndexOf('.');
        if (point >= 0 && point < firstComma)
        {
            return (0, NumberForm.Malformed);
        }

        var whole = point < 0 ? run : run[..point];
        var afterComma = whole.Length - firstComma - 1;
        if (commas == 1 && point < 0 && afterComma is 1 or 2)
        {
            Span<char> withPoint = stackalloc char[run.Length];
            run.CopyTo(withPoint);
            withPoint[firstComma] = '.';
            return (Plain(withPoint), NumberForm.Plain);
        }

        return AreThousands(whole) ? (Plain(run), NumberForm.ThousandsComma) : (0, NumberForm.Malformed);
    }

    // "1,500" and "12,345,678", but not "0,500" or "1,50,000".
    private static bool AreThousands(ReadOnlySpan<char> whole)
    {
        if (whole[0] == '0')
        {
            return false;
        }

        var groups = 0;
        foreach (var group in whole.Split(','))
        {
            var length = group.End.Value - group.Start.Value;
            if (groups == 0 ? length is 0 or > 3 : length != 3)
            {
                return false;
            }

            groups++;
        }

        return true;
    }

    private static double Plain(ReadOnlySpan<char> digits) =>
        double.Parse(digits, NumberStyles.AllowDecimalPoint | NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
}
