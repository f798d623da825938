using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;

namespace Assistant.Voice.Speaking;

/// <summary>
/// A reply as it is said: verdict, a stop and cautions first, then what was taken and what follows from it, the question last. What would
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

    /// <param name="unsaid">Cautions of an earlier reply that were not said yet.</param>
    /// <param name="before">What is said before all else, or nothing.</param>
    public static ReplySpeech Of(Reply reply, PhraseBook phrases, SpeakingStyle style, ImmutableArray<string> unsaid, string before = "")
    {
        ArgumentNullException.ThrowIfNull(reply);
        ArgumentNullException.ThrowIfNull(phrases);
        ArgumentNullException.ThrowIfNull(style);
        ImmutableArray<string> cautions = [.. reply.Cautions.Select(c => SpokenText.Of(c.Text.Aloud)).Concat(unsaid).Distinct()];
        var ask = Question(reply);
        var left = Longest - style.Estimate(Joined([before, .. cautions, ask]));
        var (first, said, rest) = (before.Length > 0 ? new List<string> { before } : [], new List<string>(), new List<string>());
        foreach (var (sentence, isFirst) in Sentences(reply, VerdictOpening(phrases)).OrderBy(s => !s.IsFirst))
        {
            left -= style.Estimate(sentence);

            // Once something waits, all behind it waits too: nothing is told out of its order. A verdict and a stop never wait.
            (isFirst ? first : rest.Count > 0 || left < TimeSpan.Zero ? rest : said).Add(sentence);
        }

        rest.AddRange(reply.Because.Select(b => Whole(SpokenText.Of(b.Aloud))));
        rest.AddRange(reply.Cautions.Select(c => SpokenText.Of(c.Text.Full)));
        var waiting = Joined(rest);

        // Asked for all there is, or with nothing else to say, the first of it does not wait to be asked for again.
        var isAlone = first.Count == 0 && cautions.IsEmpty && ask.Length == 0;
        var room = Longest - style.Estimate(Joined([.. first, .. cautions, ask]));
        if (rest.Count > 0 && said.Count == 0 && (isAlone || (reply.IsWhole && style.Estimate(Sentence().Split(waiting)[0]) <= room)))
        {
            (var portion, waiting) = Portion(waiting, style, room);
            said.Add(portion);
        }

        var (now, unheard) = Fit(first, cautions, [.. said, ask], phrases, style);
        return new(now, unheard, waiting);
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
    public static (string Now, string Waiting) Portion(string rest, SpeakingStyle style) => Portion(rest, style, Longest);

    private static (string Now, string Waiting) Portion(string rest, SpeakingStyle style, TimeSpan longest)
    {
        ArgumentNullException.ThrowIfNull(rest);
        ArgumentNullException.ThrowIfNull(style);
        var sentences = Sentence().Split(rest);
        var count = Enumerable.Range(1, sentences.Length).TakeWhile(n => n == 1 || style.Estimate(Joined(sentences.Take(n))) <= longest).Last();
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

    // A reason is written to stand in a list; said one after the other, each is a sentence.
    private static string Whole(string reason) => reason.Length == 0 ? "" : char.ToUpperInvariant(reason[0]) + reason[1..] + (reason[^1] is '.' or '!' or '?' ? "" : ".");

    private static string Joined(IEnumerable<string> sentences) => string.Join(' ', sentences.Where(s => s.Length > 0));

    // What is said, sentence by sentence, and whether it comes first: a verdict, and whatever tells to stop.
    private static IEnumerable<(string Spoken, bool IsFirst)> Sentences(Reply reply, string verdict)
    {
        var parts = reply.Parts.IsDefaultOrEmpty ? [reply.Say] : reply.Parts.Select(p => p.Text);
        return parts.SelectMany(
            part => Sentence().Split(part.Aloud).Where(s => s.Length > 0),
            (part, s) => (SpokenText.Of(s), part.Full.StartsWith("STOP", StringComparison.Ordinal) || s.StartsWith(verdict, StringComparison.Ordinal)));
    }

    // How the phrase of a verdict begins, up to the fault's name.
    private static string VerdictOpening(PhraseBook phrases)
    {
        var spoken = phrases.Say("verdict.established", default, ("fault", "\u0001")).Aloud;
        return spoken[..spoken.IndexOf('\u0001', StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"(?<=[.!?])\s+(?=[A-Z0-9])")]
    private static partial Regex Sentence();
}
