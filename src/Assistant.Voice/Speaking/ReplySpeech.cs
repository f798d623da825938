using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;

namespace Assistant.Voice.Speaking;

/// <summary>
/// A reply as it is said: verdict and cautions first, then what was taken and what follows from it, the question last. What would
/// take too long waits for "more"; a caution never does. Where even the cautions take too long they come in parts, the act's own
/// first, each part ended by "say continue", and the question is held back until all are heard: nobody is asked for an act whose
/// cautions are still to come. None is left out for having been heard a while ago; which of them a reply has is the rules' business.
/// </summary>
/// <param name="Now">What is said at once.</param>
/// <param name="Unheard">The cautions that are still to be said, before the question.</param>
/// <param name="Rest">What "more" says, the cautions in whole sentences at its end; empty where all was said.</param>
public sealed partial record ReplySpeech(string Now, ImmutableArray<string> Unheard, string Rest)
{
    /// <summary>About the longest anybody listens to in one piece.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(12);

    /// <param name="before">Cautions of an earlier reply that were not said yet.</param>
    public static ReplySpeech Of(Reply reply, PhraseBook phrases, SpeakingStyle style, ImmutableArray<string> before)
    {
        ArgumentNullException.ThrowIfNull(reply);
        ArgumentNullException.ThrowIfNull(phrases);
        ArgumentNullException.ThrowIfNull(style);
        ImmutableArray<string> cautions = [.. reply.Cautions.Select(c => SpokenText.Of(c.Text.Aloud)).Concat(before).Distinct()];
        var ask = Question(reply);
        var left = Longest - style.Estimate(Joined([.. cautions, ask]));
        var (verdicts, said, rest) = (new List<string>(), new List<string>(), new List<string>());
        var opening = VerdictOpening(phrases);
        foreach (var sentence in Sentence().Split(reply.Say.Aloud).Where(s => s.Length > 0).OrderBy(s => !s.StartsWith(opening, StringComparison.Ordinal)))
        {
            var spoken = SpokenText.Of(sentence);
            left -= style.Estimate(spoken);

            // Once something waits, all behind it waits too: nothing is told out of its order. A verdict never waits.
            var isVerdict = sentence.StartsWith(opening, StringComparison.Ordinal);
            (isVerdict ? verdicts : rest.Count > 0 || left < TimeSpan.Zero ? rest : said).Add(spoken);
        }

        rest.AddRange(reply.Because.Select(b => SpokenText.Of(b.Aloud)));
        rest.AddRange(reply.Cautions.Select(c => SpokenText.Of(c.Text.Full)));
        var (now, unheard) = Fit(verdicts, cautions, [.. said, ask], phrases, style);
        return new(now, unheard, Joined(rest));
    }

    /// <summary>What follows "continue": the cautions not said yet, and after the last of them the question.</summary>
    public static (string Now, ImmutableArray<string> Unheard) On(ImmutableArray<string> unheard, Reply asked, PhraseBook phrases, SpeakingStyle style)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(phrases);
        ArgumentNullException.ThrowIfNull(style);
        return Fit([], unheard, [Question(asked)], phrases, style);
    }

    /// <summary>As much of what waits for "more" as is listened to in one piece, and what still waits then.</summary>
    public static (string Now, string Waiting) Portion(string rest, SpeakingStyle style)
    {
        ArgumentNullException.ThrowIfNull(rest);
        ArgumentNullException.ThrowIfNull(style);
        var sentences = Sentence().Split(rest);
        var count = Enumerable.Range(1, sentences.Length).TakeWhile(n => n == 1 || style.Estimate(Joined(sentences.Take(n))) <= Longest).Last();
        return (Joined(sentences.Take(count)), Joined(sentences.Skip(count)));
    }

    /// <summary>The question alone; empty where nothing is asked.</summary>
    public static string Question(Reply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        return reply.Ask is { IsEmpty: false } ask ? SpokenText.Of(ask.Aloud) : "";
    }

    // All of it, or as many of the cautions as fit; the last of them is kept for the question, so that something is said before it.
    private static (string Now, ImmutableArray<string> Unheard) Fit(List<string> first, ImmutableArray<string> cautions, IEnumerable<string> last, PhraseBook phrases, SpeakingStyle style)
    {
        var whole = Joined([.. first, .. cautions, .. last]);
        var least = first.Count > 0 ? 0 : 1;
        if (cautions.Length <= least || style.Estimate(whole) <= Longest)
        {
            return (whole, []);
        }

        var more = SpokenText.Of(phrases.Say("voice.go-on", default).Aloud);
        string Part(int count) => Joined([.. first, .. cautions.Take(count), more]);
        var fitting = Enumerable.Range(least, cautions.Length - least).TakeWhile(n => n == least || style.Estimate(Part(n)) <= Longest).Last();
        return (Part(fitting), cautions[fitting..]);
    }

    private static string Joined(IEnumerable<string> sentences) => string.Join(' ', sentences.Where(s => s.Length > 0));

    // How the phrase of a verdict begins, up to the fault's name.
    private static string VerdictOpening(PhraseBook phrases)
    {
        var spoken = phrases.Say("verdict.established", default, ("fault", "\u0001")).Aloud;
        return spoken[..spoken.IndexOf('\u0001', StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"(?<=[.!?])\s+(?=[A-Z0-9])")]
    private static partial Regex Sentence();
}
