using System.Text.RegularExpressions;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Speaking;

/// <summary>How long the assistant speaks in one piece, and that no caution is lost over it: every reply of the written conversations, the long ones timed as they are spoken.</summary>
[Collection(HearingCollection.Name)]
public sealed partial class SpeechLengthTests(HearingParts hearing, ITestOutputHelper output)
{
    /// <summary>"About twelve seconds".</summary>
    private const double Longest = 12.9;

    /// <summary>What is estimated shorter is not timed: the estimate is never so far off.</summary>
    private const double Timed = 11;

    private static readonly SpeakingStyle Style = new();

    [Fact]
    public async Task Nothing_said_in_one_piece_takes_longer_than_about_twelve_seconds_however_many_cautions_there_are()
    {
        var espeak = new EspeakVoice();
        var replies = Replies();
        var pieces = replies.SelectMany(r => Pieces(r.Reply) is var (said, more) ? said.Concat(more) : [], (r, piece) => (r.File, r.Said, Piece: piece)).DistinctBy(p => p.Piece).ToList();
        var longest = 0.0;
        foreach (var (file, said, piece) in pieces.Where(p => Style.Estimate(p.Piece).TotalSeconds > Timed).OrderByDescending(p => Style.Estimate(p.Piece)))
        {
            var seconds = (await espeak.SayAsync(piece, Style)).Duration.TotalSeconds;
            longest = Math.Max(longest, seconds);
            Assert.InRange(seconds - Style.Estimate(piece).TotalSeconds, -Longest + Timed, Longest - Timed);
            Assert.True(seconds <= Longest, $"{seconds:0.0} s ({file}, \"{said}\"): {piece}");
        }

        var parted = replies.Where(r => Pieces(r.Reply).Said.Count > 1).ToList();
        output.WriteLine($"longest {longest:0.0} s of {pieces.Count} pieces; {parted.Count} of {replies.Count} replies in parts:");
        output.WriteLine(string.Join('\n', parted.Select(r => $"{r.Reply.Cautions.Length} cautions ({r.File}, \"{r.Said}\"): {string.Join(" | ", Pieces(r.Reply).Said)}").Distinct()));
        Assert.True(replies.Count > 300, $"Only {replies.Count} replies were looked at.");
    }

    [Fact]
    public void Every_caution_is_said_before_the_question_it_belongs_to_and_the_question_last()
    {
        foreach (var (file, said, reply) in Replies())
        {
            var (pieces, ask) = (Pieces(reply).Said, SpokenText.Of(reply.Ask?.Aloud ?? ""));
            var all = string.Join(' ', pieces);

            Assert.All(reply.Cautions, c => Assert.Contains(SpokenText.Of(c.Text.Aloud), all, StringComparison.Ordinal));
            Assert.EndsWith(ask, pieces[^1], StringComparison.Ordinal);
            Assert.All(reply.Cautions, c => Assert.True(
                ask.Length == 0 || all.IndexOf(SpokenText.Of(c.Text.Aloud), StringComparison.Ordinal) < all.LastIndexOf(ask, StringComparison.Ordinal), $"{c.Code} after the question ({file}, \"{said}\")"));
        }
    }

    [Fact]
    public void What_tells_to_stop_waits_neither_for_the_cautions_nor_for_more()
    {
        var stop = new SaidPart("judged.test-pressure.over-limit", null, new("STOP: 300 psig is above the limit. Let it down now.", "STOP: 300 psig over it. Let it down."));
        var cautions = Enumerable.Range(1, 4).Select(i => new SpokenCaution($"c{i}", new($"Mind the long red pipe number {i} by the door.", $"Mind the long red pipe number {i} by the door.")));
        var reply = Replies()[0].Reply with { Say = stop.Text, Parts = [stop], Cautions = [.. cautions] };

        Assert.StartsWith("STOP: 300 P S I over it. Let it down. Mind", Pieces(reply).Said[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Where_there_is_only_what_would_wait_its_first_part_is_said_at_once()
    {
        var reasons = string.Join(' ', Enumerable.Range(1, 12).Select(i => $"Reason {i} of those that led to it."));
        var reply = Replies()[0].Reply with { Say = Phrase.Empty, Parts = [], Because = [new(reasons, reasons)], Cautions = [], Ask = null, IsWhole = true };

        Assert.StartsWith("Reason 1 of", Pieces(reply).Said[0], StringComparison.Ordinal);
        Assert.EndsWith("to it. The head?", Pieces(reply with { Ask = new("The head?", "The head?") }).Said[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_caution_says_in_whole_sentences_is_behind_more()
    {
        var reply = Replies().First(r => r.Reply.Cautions.Length > 1).Reply;

        var rest = ReplySpeech.Of(reply, hearing.Parts.Phrases, Style, []).Rest;

        Assert.All(reply.Cautions, c => Assert.Contains(SpokenText.Of(c.Text.Full), rest, StringComparison.Ordinal));
    }

    [Fact]
    public void What_waits_for_more_comes_in_pieces_and_none_of_it_is_lost()
    {
        var rest = string.Join(' ', Enumerable.Range(1, 30).Select(i => $"Reason {i} of those that led to it."));
        var pieces = new List<string>();
        for (var left = rest; left.Length > 0;)
        {
            (var now, left) = ReplySpeech.Portion(left, Style);
            pieces.Add(now);
        }

        Assert.Equal(rest, string.Join(' ', pieces));
        Assert.All(pieces, p => Assert.InRange(Style.Estimate(p).TotalSeconds, 0.5, ReplySpeech.Longest.TotalSeconds));
    }

    [Fact]
    public void Nothing_said_has_signs_abbreviations_or_more_to_choose_from_than_one_keeps_in_mind()
    {
        foreach (var (file, said, reply) in Replies())
        {
            var (pieces, more) = Pieces(reply);
            Assert.All(pieces.Concat(more), p => Assert.False(ForTheEye().IsMatch(p), $"{ForTheEye().Match(p).Value} ({file}, \"{said}\"): {p}"));
            Assert.InRange(ReplySpeech.Question(reply).Count(c => c == ','), 0, 6);
        }
    }

    [GeneratedRegex(@"[/=°%_{}<>|\[\]]|\d{4}-\d{2}|\b(psig?|psia|kPa|mTorr|degF|degC|inHg|lb|oz|kg|min|hr|WC|SST|SCT|TXV|EEV|TD)\b")]
    private static partial Regex ForTheEye();

    private List<(string File, string Said, Reply Reply)> Replies() =>
        [.. WrittenCalls.Files.SelectMany(f => WrittenCalls.Replies(hearing.Parts.Engine, f), (f, r) => (Path.GetFileNameWithoutExtension(f), r.Said, r.Reply))];

    /// <summary>A reply as it is said where each part is answered by "continue", and what "more" says then.</summary>
    private (List<string> Said, List<string> More) Pieces(Reply reply)
    {
        var speech = ReplySpeech.Of(reply, hearing.Parts.Phrases, Style, []);
        var (pieces, more) = (new List<string> { speech.Now }, new List<string>());
        for (var unheard = speech.Unheard; !unheard.IsEmpty;)
        {
            (var now, unheard) = ReplySpeech.On(unheard, reply, hearing.Parts.Phrases, Style);
            pieces.Add(now);
        }

        for (var rest = speech.Rest; rest.Length > 0;)
        {
            (var now, rest) = ReplySpeech.Portion(rest, Style);
            more.Add(now);
        }

        return (pieces, more);
    }
}
