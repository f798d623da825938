using Assistant.Voice;
using Assistant.Voice.Dialogues;
using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.App.Web.Voice;

/// <summary>One talk on the page: its state, and the ears for a running sound. One request at a time.</summary>
internal sealed class PageTalk : IDisposable
{
    private static readonly TimeSpan UntilSleep = TimeSpan.FromSeconds(60);

    private readonly VoiceSession session;
    private readonly SpeechAhead voice = new(new EspeakVoice());
    private readonly LiveEar ear;
    private readonly SemaphoreSlim one = new(1, 1);
    private Endpointer overSpeech = new(EndpointerSettings.OverSpeech);
    private TimeSpan silent;

    public PageTalk(VoiceSession session) => (this.session, ear) = (session, new(session, voice));

    public DateTimeOffset Used { get; set; }

    /// <summary>Begins, or says again what is asked.</summary>
    public Task<VoiceView> StartAsync(CancellationToken cancellation) => InTurnAsync(async () =>
    {
        Fresh();
        var turn = await session.StartAsync(cancellation: cancellation);
        _ = session.WarmUpAsync();
        return await ViewAsync(turn, cancellation);
    }, cancellation);

    /// <summary>A whole utterance: the button was held while it was said.</summary>
    public Task<VoiceView> HearAsync(PcmAudio utterance, CancellationToken cancellation) =>
        InTurnAsync(async () => await ViewAsync(await session.HearAsync(utterance, cancellation), cancellation), cancellation);

    /// <summary>The next piece of a running sound; gives a turn where an utterance has ended in it.</summary>
    public Task<VoiceView> ListenAsync(PcmAudio piece, CancellationToken cancellation) => InTurnAsync(async () =>
    {
        overSpeech = new(EndpointerSettings.OverSpeech);
        if (ear.Take(piece.At(PcmAudio.HearingRate).Samples) is { } utterance)
        {
            Fresh();
            return await ViewAsync(await session.HearAsync(utterance, cancellation), cancellation);
        }

        silent = ear.Speaking ? TimeSpan.Zero : silent + piece.Duration;
        if (silent > UntilSleep)
        {
            silent = TimeSpan.Zero;
            session.Sleep();
        }

        return Nothing(ear.Speaking);
    }, cancellation);

    /// <summary>The next piece while the assistant speaks: it can stop or change the speech, and nothing else.</summary>
    public Task<VoiceView> ListenWhileSpeakingAsync(PcmAudio piece, CancellationToken cancellation) => InTurnAsync(async () =>
    {
        Fresh();
        if (overSpeech.Take(piece.At(PcmAudio.HearingRate).Samples).FirstOrDefault() is not { } sound)
        {
            return Nothing(isSpeech: false);
        }

        var turn = session.HearWhileSpeaking(sound);
        return turn.Heard.Accepted is null ? Nothing(isSpeech: false)
            : await ViewAsync(turn.Sent is { } text ? await session.SendAsync(text, cancellation) with { Heard = turn.Heard } : turn, cancellation) with { Stops = true };
    }, cancellation);

    public void Dispose() => one.Dispose();

    // What came before is not part of the next utterance.
    private void Fresh()
    {
        ear.Forget();
        silent = TimeSpan.Zero;
    }

    private VoiceView Nothing(bool isSpeech) => new(Phase, isSpeech, false, null, null, "", null, null, false);

    private string Phase => (session.State?.Phase ?? VoicePhase.Answer).ToString().ToLowerInvariant();

    private async Task<VoiceView> ViewAsync(VoiceTurn turn, CancellationToken cancellation)
    {
        var (sound, note) = ((string?)null, (string?)null);
        if (turn.Say.Length > 0)
        {
            try
            {
                sound = Convert.ToBase64String(WavFile.ToBytes(await voice.SayAsync(turn.Say, session.State!.Style, cancellation)));
            }
            catch (VoicePartMissingException missing)
            {
                // The browser's own voice takes the text, and where it has none it stands on the screen.
                note = missing.Message;
            }
        }

        // Talk that is not for it does not stand on the screen as the nearest thing it listens for.
        var heard = session.LastPhase == VoicePhase.WakeWord ? turn.Heard.Accepted : turn.Heard.Words;
        return new(Phase, false, true, heard, turn.Sent, turn.Say, sound, note, false);
    }

    private async Task<VoiceView> InTurnAsync(Func<Task<VoiceView>> work, CancellationToken cancellation)
    {
        await one.WaitAsync(cancellation);
        try
        {
            return await work();
        }
        finally
        {
            one.Release();
        }
    }
}

/// <summary>A turn by voice as the page takes it.</summary>
/// <param name="Phase">What is listened for now: answer, confirmation, pair, digits, resuming, goingon, wakeword.</param>
/// <param name="Speech">True while somebody is speaking.</param>
/// <param name="Turn">True where an utterance was taken and what follows is about it.</param>
/// <param name="Heard">The words heard, taken or not.</param>
/// <param name="Sent">What was said on the visit because of it; null where nothing was.</param>
/// <param name="Say">What is to be said, as text for the ear.</param>
/// <param name="Sound">The same as a WAV file in base 64; null where this machine has no voice.</param>
/// <param name="Note">Why there is none, in one line.</param>
/// <param name="Stops">True where the speech now running is to stop.</param>
public sealed record VoiceView(string Phase, bool Speech, bool Turn, string? Heard, string? Sent, string Say, string? Sound, string? Note, bool Stops);
