using Assistant.Dialogue.Replies;
using Assistant.Trade.Quantities;
using Assistant.Voice.Hearing;
using Assistant.Voice.Sound;

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

    /// <summary>Says a line on the visit.</summary>
    Task<Reply> SayAsync(string text, CancellationToken cancellation);
}

/// <summary>Carries one talk by voice: utterance in, what to say out. One utterance at a time.</summary>
public sealed class VoiceSession(SpeechRecogniser recogniser, VoiceDialogue dialogue, IVoiceVisit visit)
{
    /// <summary>Where the talk stands; null before it began.</summary>
    public VoiceState? State { get; private set; }

    /// <summary>What was waited for when the last utterance came; null before one came.</summary>
    public VoicePhase? LastPhase { get; private set; }

    /// <summary>Begins with what the visit asks now, or with the reply that opened it.</summary>
    public async Task<VoiceTurn> StartAsync(Reply? opening = null, CancellationToken cancellation = default)
    {
        var step = dialogue.Start(opening ?? await visit.NowAsync(cancellation), visit.Units, State?.Style);
        State = step.State;
        return new(Heard.Nothing, step.Say);
    }

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
            var moved = state.Phase == VoicePhase.Answer ? dialogue.Answered(state, now) : dialogue.MovedOn(state, now);
            State = moved.State;
            return new(Heard.Nothing, moved.Say);
        }

        LastPhase = state.Phase;
        var heard = recogniser.Hear(utterance, dialogue.Grammar(state), words => dialogue.Rivals(state, words));
        var step = dialogue.Hear(state, heard);
        State = step.State;
        return step.Send is { } text ? await SendAsync(text, cancellation) with { Heard = heard } : new(heard, step.Say);
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
}
