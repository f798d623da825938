using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Turns;

/// <summary>What one message led to: the events to append and the reply to give once they are stored.</summary>
public sealed record Turn(ImmutableArray<VisitEvent> Events, VisitState After, Reply Reply);
