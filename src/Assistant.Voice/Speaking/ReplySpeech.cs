using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;

namespace Assistant.Voice.Speaking;

/// <summary>
/// A reply as it is said: verdict and cautions first, then what was taken and what follows from it, the question last. What would
/// take too long waits for "more"; a caution and the question never do.
/// </summary>
/// <param name="Now">What is said at once.</param>
/// <param name="Rest">What "more" says; empty where all was said.</param>
public sealed partial record ReplySpeech(string Now, string Rest)
{
    /// <summary>About the longest anybody listens to in one piece.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(12);

    public static ReplySpeech Of(Reply reply, PhraseBook phrases, SpeakingStyle style)
    {
        ArgumentNullException.ThrowIfNull(reply);
        ArgumentNullException.ThrowIfNull(phrases);
        ArgumentNullException.ThrowIfNull(style);
        string[] cautions = [.. reply.Cautions.Select(c => SpokenText.Of(c.Text.Brief))];
        var ask = reply.Ask is { IsEmpty: false } asked ? SpokenText.Of(asked.Brief) : "";
        var left = Longest - style.Estimate(string.Join(' ', cautions.Append(ask)));
        var (said, rest) = (new List<string>(), new List<string>());
        var opening = VerdictOpening(phrases);
        foreach (var sentence in Sentence().Split(reply.Say.Brief).Where(s => s.Length > 0).OrderBy(s => !s.StartsWith(opening, StringComparison.Ordinal)))
        {
            var spoken = SpokenText.Of(sentence);
            left -= style.Estimate(spoken);

            // Once something waits, all behind it waits too: nothing is told out of its order. A verdict never waits.
            var waits = rest.Count > 0 || left < TimeSpan.Zero;
            (waits && !sentence.StartsWith(opening, StringComparison.Ordinal) ? rest : said).Add(spoken);
        }

        rest.AddRange(reply.Because.Select(b => SpokenText.Of(b.Brief)));
        var verdicts = said.TakeWhile(s => s.StartsWith(opening, StringComparison.Ordinal)).ToList();
        return new(string.Join(' ', [.. verdicts, .. cautions, .. said.Skip(verdicts.Count), .. ask.Length > 0 ? [ask] : Array.Empty<string>()]), string.Join(' ', rest));
    }

    /// <summary>As much of what waits for "more" as is listened to in one piece, and what still waits then.</summary>
    public static ReplySpeech Portion(string rest, SpeakingStyle style)
    {
        ArgumentNullException.ThrowIfNull(rest);
        ArgumentNullException.ThrowIfNull(style);
        var sentences = Sentence().Split(rest);
        var count = Enumerable.Range(1, sentences.Length).TakeWhile(n => n == 1 || style.Estimate(string.Join(' ', sentences.Take(n))) <= Longest).Last();
        return new(string.Join(' ', sentences.Take(count)), string.Join(' ', sentences.Skip(count)));
    }

    // How the phrase of a verdict begins, up to the fault's name.
    private static string VerdictOpening(PhraseBook phrases)
    {
        var brief = phrases.Say("verdict.established", default, ("fault", "\u0001")).Brief;
        return brief[..brief.IndexOf('\u0001', StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"(?<=[.!?])\s+(?=[A-Z0-9])")]
    private static partial Regex Sentence();
}
