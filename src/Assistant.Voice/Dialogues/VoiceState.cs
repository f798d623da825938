using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Voice.Speaking;

namespace Assistant.Voice.Dialogues;

/// <summary>What the voice waits for.</summary>
public enum VoicePhase
{
    /// <summary>The answer to the question asked, or a command.</summary>
    Answer,

    /// <summary>"Correct" or "wrong" to what was read back.</summary>
    Confirmation,

    /// <summary>Which of two numbers that sound alike.</summary>
    Pair,

    /// <summary>Digits, up to "go".</summary>
    Digits,

    /// <summary>"Continue", after "wait".</summary>
    Resuming,

    /// <summary>"Continue" or "yes", before the rest of the cautions and the question.</summary>
    GoingOn,

    /// <summary>The wake word.</summary>
    WakeWord,
}

/// <summary>Where the talk by voice stands. What is pending here is not stored anywhere yet.</summary>
public sealed record VoiceState
{
    public required Reply Asked { get; init; }

    public required UnitSystem Units { get; init; }

    public VoicePhase Phase { get; init; }

    /// <summary>What was read back and waits for a yes.</summary>
    public Pending? Pending { get; init; }

    /// <summary>The two that sound alike.</summary>
    public (Pending First, Pending Second)? Pair { get; init; }

    /// <summary>Digits spelled so far, such as "-8.5".</summary>
    public string Digits { get; init; } = "";

    /// <summary>How often in a row the question was not answered so that it could be taken.</summary>
    public int Misses { get; init; }

    /// <summary>How often in a row a read-back got no clear answer.</summary>
    public int UnclearAnswers { get; init; }

    /// <summary>What was read back last and refused, by its meaning; null for nothing. It is not heard again at the next try.</summary>
    public string? Refused { get; init; }

    /// <summary>The words offered aloud since this question was missed.</summary>
    public ImmutableArray<Offer> Offered { get; init; } = [];

    /// <summary>What was said last, for "say again".</summary>
    public string Last { get; init; } = "";

    /// <summary>What "more" will say.</summary>
    public string Rest { get; init; } = "";

    /// <summary>Cautions that are still to be said, before the next question.</summary>
    public ImmutableArray<string> Unheard { get; init; } = [];

    /// <summary>Where to go back to after waiting.</summary>
    public VoicePhase Interrupted { get; init; }

    public SpeakingStyle Style { get; init; } = new();

    /// <summary>Whether an answer is waited for, so that a command is something nobody asked for.</summary>
    public bool Asks => Fact is not null || !Asked.Choices.IsEmpty;

    /// <summary>The same question with nothing pending, missed or offered.</summary>
    public VoiceState Fresh => this with
    {
        Phase = VoicePhase.Answer, Pending = null, Pair = null, Digits = "", UnclearAnswers = 0, Misses = 0, Refused = null, Offered = [],
    };

    public Fact? Fact => Asked.AskedFact is { } name ? FactCatalogue.Find(name) : null;
}

/// <summary>Something heard that may be sent on once it is confirmed.</summary>
/// <param name="Text">What the conversation will be told.</param>
/// <param name="Words">The words as they were heard, where it is a number said as one.</param>
/// <param name="Reading">The number, or null for a word.</param>
/// <param name="Meaning">What the phrase means, such as "choice:dirty"; null for what was said freely.</param>
public sealed record Pending(string Text, string Words, Reading? Reading, string? Meaning = null);

/// <summary>Words that were offered aloud.</summary>
/// <param name="Text">What the conversation is told where they are said and confirmed.</param>
public sealed record Offer(string Words, string Text);
