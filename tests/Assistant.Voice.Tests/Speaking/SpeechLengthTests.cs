using Assistant.Dialogue.Replies;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Speaking;

/// <summary>How long the assistant speaks in one piece: every reply of the written conversations, the long ones timed as they are spoken.</summary>
[Collection(HearingCollection.Name)]
public sealed class SpeechLengthTests(HearingParts hearing, ITestOutputHelper output)
{
    /// <summary>"About twelve seconds".</summary>
    private const double Longest = 12.9;

    /// <summary>What is estimated shorter is not timed: the estimate is never so far off.</summary>
    private const double Timed = 11;

    private static readonly SpeakingStyle Style = new();

    [Fact]
    public async Task No_reply_takes_longer_than_about_twelve_seconds_but_for_its_cautions_which_are_never_cut()
    {
        var espeak = new EspeakVoice();
        var replies = WrittenCalls.Files.SelectMany(f => WrittenCalls.Replies(hearing.Parts.Engine, f), (f, r) => (File: Path.GetFileNameWithoutExtension(f), r.Said, r.Reply, Speech: ReplySpeech.Of(r.Reply, hearing.Parts.Phrases, Style)))
            .DistinctBy(r => r.Speech.Now).ToList();
        var cautious = 0;
        foreach (var (file, said, reply, speech) in replies.Where(r => Style.Estimate(r.Speech.Now).TotalSeconds > Timed).OrderByDescending(r => Style.Estimate(r.Speech.Now)))
        {
            var seconds = (await espeak.SayAsync(speech.Now, Style)).Duration.TotalSeconds;
            Assert.InRange(seconds - Style.Estimate(speech.Now).TotalSeconds, -Longest + Timed, Longest - Timed);
            if (seconds > Longest)
            {
                cautious++;
                output.WriteLine($"{seconds:0.0} s, {reply.Cautions.Length} cautions ({file}, \"{said}\"): {speech.Now}");
                Assert.True(IsVerdictCautionsAndQuestion(reply, speech), $"{seconds:0.0} s, and more than its cautions: {speech.Now}");
            }
        }

        output.WriteLine($"{cautious} of {replies.Count} replies longer than {Longest} s, all for their cautions");
        Assert.True(replies.Count > 300, $"Only {replies.Count} replies were looked at.");
    }

    [Fact]
    public void Every_caution_and_the_question_are_in_what_is_said_at_once()
    {
        foreach (var (_, reply) in WrittenCalls.Files.SelectMany(f => WrittenCalls.Replies(hearing.Parts.Engine, f)))
        {
            var now = ReplySpeech.Of(reply, hearing.Parts.Phrases, Style).Now;

            Assert.All(reply.Cautions, c => Assert.Contains(SpokenText.Of(c.Text.Brief), now, StringComparison.Ordinal));
            Assert.EndsWith(SpokenText.Of(reply.Ask?.Brief ?? ""), now, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_waits_for_more_comes_in_pieces_and_none_of_it_is_lost()
    {
        var rest = string.Join(' ', Enumerable.Range(1, 30).Select(i => $"Reason {i} of those that led to it."));
        var pieces = new List<string>();
        for (var left = rest; left.Length > 0;)
        {
            var portion = ReplySpeech.Portion(left, Style);
            pieces.Add(portion.Now);
            left = portion.Rest;
        }

        Assert.Equal(rest, string.Join(' ', pieces));
        Assert.All(pieces, p => Assert.InRange(Style.Estimate(p).TotalSeconds, 0.5, ReplySpeech.Longest.TotalSeconds));
    }

    private static bool IsVerdictCautionsAndQuestion(Reply reply, ReplySpeech speech)
    {
        var bare = reply.Cautions.Aggregate(speech.Now, (text, c) => text.Replace(SpokenText.Of(c.Text.Brief), "", StringComparison.Ordinal));
        var ask = SpokenText.Of(reply.Ask?.Brief ?? "");
        bare = (ask.Length > 0 ? bare.Replace(ask, "", StringComparison.Ordinal) : bare).Trim();
        return reply.Cautions.Length > 0 && (bare.Length == 0 || (bare.StartsWith("Verdict", StringComparison.Ordinal) && bare.Count(c => c == '.') <= 1));
    }
}
