using Assistant.Dialogue.Replies;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Speaking;
using Xunit.Abstractions;

namespace Assistant.Voice.Tests.Speaking;

/// <summary>How long the assistant speaks in one piece, and that no caution is lost over it: every reply of the written conversations, the long ones timed as they are spoken.</summary>
[Collection(HearingCollection.Name)]
public sealed class SpeechLengthTests(HearingParts hearing, ITestOutputHelper output)
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
        var pieces = replies.SelectMany(r => Pieces(r.Reply), (r, piece) => (r.File, r.Said, Piece: piece)).DistinctBy(p => p.Piece).ToList();
        var longest = 0.0;
        foreach (var (file, said, piece) in pieces.Where(p => Style.Estimate(p.Piece).TotalSeconds > Timed).OrderByDescending(p => Style.Estimate(p.Piece)))
        {
            var seconds = (await espeak.SayAsync(piece, Style)).Duration.TotalSeconds;
            longest = Math.Max(longest, seconds);
            Assert.InRange(seconds - Style.Estimate(piece).TotalSeconds, -Longest + Timed, Longest - Timed);
            Assert.True(seconds <= Longest, $"{seconds:0.0} s ({file}, \"{said}\"): {piece}");
        }

        var parted = replies.Where(r => Pieces(r.Reply).Count > 1).ToList();
        output.WriteLine($"longest {longest:0.0} s of {pieces.Count} pieces; {parted.Count} of {replies.Count} replies in parts:");
        output.WriteLine(string.Join('\n', parted.Select(r => $"{r.Reply.Cautions.Length} cautions ({r.File}, \"{r.Said}\"): {string.Join(" | ", Pieces(r.Reply))}").Distinct()));
        Assert.True(replies.Count > 300, $"Only {replies.Count} replies were looked at.");
    }

    [Fact]
    public void Every_caution_is_said_before_the_question_it_belongs_to_and_the_question_last()
    {
        foreach (var (file, said, reply) in Replies())
        {
            var (pieces, ask) = (Pieces(reply), SpokenText.Of(reply.Ask?.Aloud ?? ""));
            var all = string.Join(' ', pieces);

            Assert.All(reply.Cautions, c => Assert.Contains(SpokenText.Of(c.Text.Aloud), all, StringComparison.Ordinal));
            Assert.EndsWith(ask, pieces[^1], StringComparison.Ordinal);
            Assert.All(reply.Cautions, c => Assert.True(
                ask.Length == 0 || all.IndexOf(SpokenText.Of(c.Text.Aloud), StringComparison.Ordinal) < all.LastIndexOf(ask, StringComparison.Ordinal), $"{c.Code} after the question ({file}, \"{said}\")"));
        }
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

    private List<(string File, string Said, Reply Reply)> Replies() =>
        [.. WrittenCalls.Files.SelectMany(f => WrittenCalls.Replies(hearing.Parts.Engine, f), (f, r) => (Path.GetFileNameWithoutExtension(f), r.Said, r.Reply))];

    /// <summary>A reply as it is said where each part is answered by "continue".</summary>
    private List<string> Pieces(Reply reply)
    {
        var speech = ReplySpeech.Of(reply, hearing.Parts.Phrases, Style, []);
        var pieces = new List<string> { speech.Now };
        for (var unheard = speech.Unheard; !unheard.IsEmpty;)
        {
            (var now, unheard) = ReplySpeech.On(unheard, reply, hearing.Parts.Phrases, Style);
            pieces.Add(now);
        }

        return pieces;
    }
}
