using System.Threading.Channels;
using Assistant.Dialogue.Replies;
using Assistant.Voice.Devices;
using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>
/// The talk at a microphone and a loudspeaker. While the assistant speaks, what is heard can only stop or change its speech: its own
/// echo can never answer it, and no value is taken from a sound that began before it had finished.
/// </summary>
/// <param name="echo">How long after its last word its own sound may still be in the room.</param>
public sealed class HandsFreeTalk(VoiceSession session, ISpeechVoice voice, Microphone microphone, Loudspeaker loudspeaker, TextWriter log, TimeSpan echo)
{
    private readonly SpeechAhead voice = new(voice);

    /// <param name="opening">The reply that opened the visit just now, with its cautions; null where it was open.</param>
    public async Task RunAsync(Reply? opening, CancellationToken cancellation)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var pieces = Channel.CreateUnbounded<short[]>();
        var hearing = Task.Run(() => RecordAsync(pieces.Writer, stop.Token), CancellationToken.None);
        try
        {
            var turn = await session.StartAsync(opening, cancellation);
            _ = session.WarmUpAsync();
            while (!hearing.IsCompleted)
            {
                await SayAsync(turn, pieces.Reader, cancellation);
                turn = await session.HearAsync(await NextAsync(pieces.Reader, cancellation), cancellation);
                await log.WriteLineAsync($"> {turn.Heard.Words ?? turn.Heard.Kind.ToString()}");
            }
        }
        catch (ChannelClosedException)
        {
            // The microphone has ended: the reason is in its own task.
        }
        finally
        {
            await stop.CancelAsync();
        }

        await hearing;
    }

    private async Task RecordAsync(ChannelWriter<short[]> pieces, CancellationToken cancellation)
    {
        try
        {
            await foreach (var piece in microphone.ListenAsync(cancellation))
            {
                pieces.TryWrite(piece);
            }
        }
        catch (OperationCanceledException)
        {
            // The talk is over.
        }
        finally
        {
            pieces.TryComplete();
        }
    }

    private async Task<PcmAudio> NextAsync(ChannelReader<short[]> pieces, CancellationToken cancellation)
    {
        var ear = new LiveEar(session, voice);
        while (true)
        {
            if (ear.Take(await pieces.ReadAsync(cancellation)) is { } utterance)
            {
                return utterance;
            }
        }
    }

    private async Task SayAsync(VoiceTurn turn, ChannelReader<short[]> pieces, CancellationToken cancellation)
    {
        while (turn.Say.Length > 0)
        {
            await log.WriteLineAsync($"< {turn.Say}");
            using var cut = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            var playing = loudspeaker.PlayAsync(await voice.SayAsync(turn.Say, session.State!.Style, cancellation), cut.Token);
            var interrupted = await InterruptedAsync(playing, pieces, cancellation);
            await cut.CancelAsync();
            await playing;
            await Task.Delay(echo, cancellation);
            while (pieces.TryRead(out _))
            {
                // What was recorded until now may be the assistant's own voice.
            }

            turn = interrupted ?? new(Heard.Nothing, "");
            if (turn.Sent is { } text)
            {
                turn = await session.SendAsync(text, cancellation);
            }
        }
    }

    private async Task<VoiceTurn?> InterruptedAsync(Task playing, ChannelReader<short[]> pieces, CancellationToken cancellation)
    {
        var ear = new Endpointer(EndpointerSettings.OverSpeech);
        while (!playing.IsCompleted)
        {
            if (!pieces.TryRead(out var piece))
            {
                await Task.WhenAny(playing, pieces.WaitToReadAsync(cancellation).AsTask());
                continue;
            }

            foreach (var sound in ear.Take(piece))
            {
                var turn = session.HearWhileSpeaking(sound);
                if (turn.Heard.Accepted is { } words)
                {
                    await log.WriteLineAsync($"> {words} (while speaking)");
                    return turn;
                }
            }
        }

        return null;
    }
}
