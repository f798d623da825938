using System.Diagnostics;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Scoring.Kit;

/// <summary>What passed between a last word and the reply to it, at the pace of a microphone.</summary>
/// <param name="Ended">From the last word until it is taken for ended.</param>
/// <param name="Heard">The rest of hearing, and the turn.</param>
/// <param name="Spoken">Until the reply's sound can be played.</param>
public sealed record ReplyWait(TimeSpan Ended, TimeSpan Heard, TimeSpan Spoken)
{
    private static readonly TimeSpan Piece = TimeSpan.FromMilliseconds(20);

    public TimeSpan All => Ended + Heard + Spoken;

    /// <summary>Says the words near a fan in pieces of 20 ms, each when its time has come, to an ear that is listening already.</summary>
    public static async Task<(ReplyWait Wait, VoiceTurn Turn)> OfAsync(VoiceSession session, SpeechAhead speech, PcmAudio words, double decibels, int seed)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(speech);
        ArgumentNullException.ThrowIfNull(words);
        const double Lead = 1;
        var sound = FanNoise.Behind(words, decibels, seed, Lead);
        var over = TimeSpan.FromSeconds(Lead) + LastWord(words);
        var ear = new LiveEar(session, speech);
        var clock = Stopwatch.StartNew();
        foreach (var (piece, index) in sound.Samples.Chunk((int)(Piece.TotalSeconds * sound.Rate)).Select((p, i) => (p, i)))
        {
            var due = (Piece * (index + 1)) - clock.Elapsed;
            if (due > TimeSpan.Zero)
            {
                await Task.Delay(due);
            }

            if (ear.Take(piece) is { } utterance)
            {
                var ended = clock.Elapsed;
                var turn = await session.HearAsync(utterance);
                var heard = clock.Elapsed;
                await speech.SayAsync(turn.Say, session.State!.Style);
                return (new(ended - over, heard - ended, clock.Elapsed - heard), turn);
            }
        }

        throw new InvalidOperationException("the words were not taken for an utterance");
    }

    // Up to the last frame that is no more than 35 dB below the loudest.
    private static TimeSpan LastWord(PcmAudio words)
    {
        var levels = words.Samples.Chunk(words.Rate / 100).Select(f => f.Average(s => (double)s * s)).ToList();
        return TimeSpan.FromMilliseconds(10 * (levels.FindLastIndex(l => l > levels.Max() / 3162) + 1));
    }
}
