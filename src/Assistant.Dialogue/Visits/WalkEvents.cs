using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>A run of a walk begins; one that was under way waits where it stands.</summary>
public sealed record WalkStarted(string Walk) : VisitEvent;

/// <summary>A walk that was left is taken up again where it stood.</summary>
public sealed record WalkResumed(string Walk) : VisitEvent;

public sealed record WalkFinished(string Walk) : VisitEvent;

/// <summary>A walk was proposed as the next one.</summary>
public sealed record WalkOffered(string Walk) : VisitEvent;

public sealed record OfferDeclined(string Walk) : VisitEvent;

public sealed record StopReached(string Walk, string Stop, string Place) : VisitEvent
{
    /// <summary>The fact asked for there, or the fault acted on; null where the stop waits for a word.</summary>
    public string? About { get; init; }
}

public sealed record StopSkipped(string Walk, string Stop) : VisitEvent;

/// <summary>A stop that asks for no fact was confirmed ("at the unit", "done").</summary>
public sealed record StopConfirmed(string Walk, string Stop) : VisitEvent;

/// <summary>One of a stop's options was named: a finding of the walk that is no fact of the plant.</summary>
/// <param name="Choice">The name the walk keeps it under.</param>
public sealed record StopChosen(string Walk, string Stop, string Choice, string Option) : VisitEvent;

/// <summary>The walk goes back: these stops are passed anew.</summary>
public sealed record StopsReopened(string Walk, ImmutableArray<string> Stops) : VisitEvent;

/// <summary>A stop's judgement was said.</summary>
/// <param name="Text">As it was said.</param>
public sealed record JudgementGiven(string Walk, string Stop, string Judgement, string Outcome, string Text, ImmutableArray<string> Because) : VisitEvent;
