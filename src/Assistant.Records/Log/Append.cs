using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Erasure;

namespace Assistant.Records.Log;

/// <summary>Events that go into one visit's log together or not at all, with what is stored beside them.</summary>
/// <param name="ExpectedVersion">The number of the last event the events were made on; 0 for a new visit.</param>
public sealed record Append(string VisitId, int ExpectedVersion, IReadOnlyList<VisitEvent> Events)
{
    /// <summary>Set where the events begin the visit.</summary>
    public Opening? Opening { get; init; }

    /// <summary>The message the events answer, with its reply; null for what no message caused.</summary>
    public Answer? Answer { get; init; }

    /// <summary>Set where the person of this name is erased from the visit; the events tell of it.</summary>
    internal PersonErasure? Erasure { get; init; }
}

/// <summary>The message that caused an append, and the reply it is answered with once stored.</summary>
/// <param name="Outbox">True where the channel delivers the reply later from the outbox.</param>
public sealed record Answer(InboundMessage Message, Reply Reply, bool Outbox = false);

/// <summary>A new visit, and the conversation that is on it from now on.</summary>
/// <param name="Replaces">The visit the conversation was on until now, or null.</param>
public sealed record Opening(VisitOpened Opened, string Channel, string Conversation, string? Replaces);
