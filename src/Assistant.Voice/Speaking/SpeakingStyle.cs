using System.Text.RegularExpressions;

namespace Assistant.Voice.Speaking;

/// <summary>How fast and how loud is spoken.</summary>
/// <param name="WordsPerMinute">From 90 to 240; 175 is the speech program's own.</param>
/// <param name="Loudness">From 50 to 200; 100 is the voice's own.</param>
public sealed partial record SpeakingStyle(int WordsPerMinute = 175, int Loudness = 130)
{
    private const int Step = 25;

    public SpeakingStyle Slower => this with { WordsPerMinute = Math.Max(90, WordsPerMinute - Step) };

    public SpeakingStyle Faster => this with { WordsPerMinute = Math.Min(240, WordsPerMinute + Step) };

    public SpeakingStyle Louder => this with { Loudness = Math.Min(200, Loudness + Step) };

    /// <summary>
    /// About how long a text takes: what a letter, a digit said as part of a number, a letter said by its name, a pause and a word take, by least squares over 120 replies
    /// as espeak-ng en-us says them at 155 and at 175 words a minute (root mean square error 0.3 s; both gave the same parts of a word's time).
    /// </summary>
    public TimeSpan Estimate(string spoken)
    {
        ArgumentNullException.ThrowIfNull(spoken);
        var names = Name().Count(spoken);
        var letters = spoken.Count(char.IsAsciiLetter) - names;
        var words = (0.152 * letters) + (0.845 * spoken.Count(char.IsAsciiDigit)) + (0.47 * names) + (1.33 * Stop().Count(spoken)) + (0.93 * spoken.Count(c => c == ','))
            + (0.4 * Point().Count(spoken)) + (0.105 * spoken.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length);
        return TimeSpan.FromMinutes(words / WordsPerMinute);
    }

    [GeneratedRegex(@"\b[A-Z]\b")]
    private static partial Regex Name();

    [GeneratedRegex(@"[.?!:;](?=\s|$)")]
    private static partial Regex Stop();

    [GeneratedRegex(@"\d\.\d")]
    private static partial Regex Point();
}
