using System.Globalization;
using System.Text.RegularExpressions;
using Assistant.App.Commands;

namespace Assistant.App.Talk;

/// <summary>
/// Reads a script: each line is what the technician says; <c>@name text</c> is said by that person; <c>+15m</c> (s, m, h, d) moves the
/// clock on; lines that begin with # and blank lines give nothing.
/// </summary>
public static partial class ScriptReader
{
    /// <summary>Ten years: far beyond any call, and no overflow of the calendar.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromDays(3660);

    /// <exception cref="CommandFailure">A line can not be read; the message names file, line and key.</exception>
    public static IEnumerable<ScriptLine> Read(string file, IEnumerable<string> lines)
    {
        var number = 0;
        foreach (var raw in lines)
        {
            number++;
            var line = raw.Trim().TrimStart('\uFEFF');
            if (line.Length > 0 && line[0] != '#')
            {
                yield return (ScriptLine?)Wait(file, number, line) ?? Spoken(file, number, line);
            }
        }
    }

    private static WaitLine? Wait(string file, int number, string line)
    {
        var match = WaitPattern().Match(line);
        if (!match.Success)
        {
            return null;
        }

        var amount = double.Parse(match.Groups["amount"].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        var days = amount * match.Groups["unit"].Value switch { "s" => 1 / 86400.0, "m" => 1 / 1440.0, "h" => 1 / 24.0, _ => 1.0 };
        return days <= LongestWait.TotalDays
            ? new(TimeSpan.FromDays(days))
            : throw new CommandFailure($"{file}:{number}: {line}: the clock moves on by ten years at most.", CommandFailure.BadInput);
    }

    private static SpokenLine Spoken(string file, int number, string line)
    {
        if (line[0] != '@')
        {
            return new(null, line);
        }

        var match = NamedPattern().Match(line);
        return match.Success
            ? new(match.Groups["name"].Value, match.Groups["text"].Value)
            : throw new CommandFailure($"{file}:{number}: {line}: a line by another person is written \"@name what is said\".", CommandFailure.BadInput);
    }

    [GeneratedRegex(@"^\+\s*(?<amount>\d{1,9}(\.\d{1,6})?)\s*(?<unit>[smhd])$")]
    private static partial Regex WaitPattern();

    [GeneratedRegex(@"^@(?<name>\S+)\s+(?<text>.+)$")]
    private static partial Regex NamedPattern();
}
