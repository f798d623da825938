using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>One turn by voice.</summary>
/// <param name="Heard">What was heard.</param>
/// <param name="Say">What is to be said, as text for the ear; empty for nothing.</param>
/// <param name="Sent">What the conversation was told; null for nothing.</param>
/// <param name="Reply">What the conversation answered.</param>
public sealed record VoiceTurn(Heard Heard, string Say, string? Sent = null, Reply? Reply = null);

/// <summary>The visit a voice takes part in, as its channel knows it.</summary>
public interface IVoiceVisit
{
    UnitSystem Units { get; }

    /// <summary>What the visit asks now; others may have answered meanwhile.</summary>
    Task<Reply> NowAsync(CancellationToken cancellation);

    /// <summary>The same with the cautions that belong to it and were told to others only: who hears it has not heard them.</summary>
    Task<Reply> WithCautionsAsync(Reply now, CancellationToken cancellation) => Task.FromResult(now);

    /// <summary>Says a line on the visit.</summary>
    Task<Reply> SayAsync(string text, CancellationToken cancellation);
}

/// <summary>Carries one talk by voice: utterance in, what to say out. One utterance at a time.</summary>
public sealed class VoiceSession(SpeechRecogniser recogniser, VoiceDialogue dialogue, IVoiceVisit visit)
{
    private Ahead? ahead;

    /// <summary>Where the talk stands; null before it began.</summary>
    public VoiceState? State { get; private set; }

    /// <summary>What was waited for when the last utterance came; null before one came.</summary>
    public VoicePhase? LastPhase { get; private set; }

    /// <summary>Begins with what the visit asks now, or with the reply that opened it.</summary>
    public async Task<VoiceTurn> StartAsync(Reply? opening = null, CancellationToken cancellation = default)
    {
        var step = dialogue.Start(opening ?? await visit.WithCautionsAsync(await visit.NowAsync(cancellation), cancellation), visit.Units, State);
        State = step.State;
        return new(Heard.Nothing, step.Say);
    }

    /// <summary>Makes ready for the first answer while the first question is asked. What is heard meanwhile waits for it.</summary>
    public Task WarmUpAsync() => State is { } state ? Task.Run(() => recogniser.WarmUp(dialogue.Grammar(state))) : Task.CompletedTask;

    /// <summary>Takes one utterance that began after the assistant had finished speaking.</summary>
    public async Task<VoiceTurn> HearAsync(PcmAudio utterance, CancellationToken cancellation = default)
    {
        if (State is not { } state)
        {
            return await StartAsync(cancellation: cancellation);
        }

        var now = await visit.NowAsync(cancellation);
        if (now.AskedFact != state.Asked.AskedFact || now.Walk != state.Asked.Walk || !now.Choices.SequenceEqual(state.Asked.Choices))
        {
            now = await visit.WithCautionsAsync(now, cancellation);
            var moved = state.Phase is VoicePhase.Answer or VoicePhase.GoingOn ? dialogue.Answered(state, now) : dialogue.MovedOn(state, now);
            State = moved.State;
            return new(Heard.Nothing, moved.Say);
        }

        LastPhase = state.Phase;
        var (heard, step) = IsAbout(utterance, state) ? await ahead!.Heard.WaitAsync(cancellation) : Hear(state, utterance);
        (State, ahead) = (step.State, null);
        return step.Send is { } text ? await SendAsync(text, cancellation) with { Heard = heard } : new(heard, step.Say);
    }

    /// <summary>
    /// Begins to hear what may turn out to be an utterance: if <see cref="HearAsync"/> is then given the very sound, it need not be
    /// heard again. Nothing is said, sent or changed by it.
    /// </summary>
    /// <param name="said">Takes what would be said to it, to be made ready.</param>
    public void HearAhead(PcmAudio sound, Action<string, SpeakingStyle> said)
    {
        // One at a time: while somebody goes on speaking it is not started over and over.
        if (State is not { } state || IsAbout(sound, state) || ahead is { Heard.IsCompleted: false })
        {
            return;
        }

        ahead = new(sound, state, Task.Run(() =>
        {
            var (heard, step) = Hear(state, sound);
            if (step is { Send: null, Say.Length: > 0 })
            {
                said(step.Say, step.State.Style);
            }

            return (heard, step);
        }));
    }

    /// <summary>Done when nothing is being heard ahead any more.</summary>
    public Task Settled => ahead?.Heard ?? Task.CompletedTask;

    /// <summary>Whether that sound was heard ahead and its words are whole: nothing that may still come would change what they mean.</summary>
    public bool IsWhole(PcmAudio sound) => State is { } state && IsAbout(sound, state) && ahead is { Heard.IsCompletedSuccessfully: true } heard
        && heard.Heard.Result.Heard.Accepted is { } words && dialogue.IsWhole(state, words);

    private bool IsAbout(PcmAudio sound, VoiceState state) => ReferenceEquals(ahead?.Sound, sound) && ahead?.State == state;

    private (Heard Heard, VoiceStep Step) Hear(VoiceState state, PcmAudio utterance)
    {
        var heard = recogniser.Hear(utterance, dialogue.Grammar(state), words => dialogue.Rivals(state, words), words => dialogue.Instead(state, words));
        return (heard, dialogue.Hear(state, heard));
    }

    /// <summary>Nobody has spoken for long: from here on only the wake word is heard, and what was pending is dropped.</summary>
    public void Sleep() => State = State is { } state ? VoiceDialogue.Sleep(state) : null;

    /// <summary>Tells the visit what was settled, and gives its answer.</summary>
    public async Task<VoiceTurn> SendAsync(string text, CancellationToken cancellation = default)
    {
        var reply = await visit.SayAsync(text, cancellation);
        var answered = dialogue.Answered(State!, reply);
        State = answered.State;
        return new(Heard.Nothing, answered.Say, text, reply);
    }

    /// <summary>Takes a sound made while the assistant speaks: at most it stops, repeats or changes the speech. Nothing in it is stored.</summary>
    public VoiceTurn HearWhileSpeaking(PcmAudio sound)
    {
        if (State is not { } state)
        {
            return new(Heard.Nothing, "");
        }

        var heard = recogniser.Hear(sound, dialogue.WhileSpeaking);
        var step = dialogue.HearWhileSpeaking(state, heard);
        State = step.State;
        return new(heard, step.Say, step.Send);
    }

    /// <param name="State">The state it was heard in: in another it would mean something else.</param>
    private sealed record Ahead(PcmAudio Sound, VoiceState State, Task<(Heard Heard, VoiceStep Step)> Heard);
}
