using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>The dialogue as a pure function: a state and a message give events and a reply. No clock, no ids, no I/O.</summary>
public interface ITurnEngine
{
    /// <summary>Opens a visit: the events that begin it and the first question.</summary>
    /// <param name="opened">Where and on what; its <see cref="VisitEvent.At"/> is the visit's start.</param>
    Turn Open(VisitOpened opened);

    /// <summary>Takes one message.</summary>
    Turn Take(VisitState state, InboundMessage message);

    /// <summary>
    /// Takes one message that was said before its speaker could know all that stands in the visit by now: it is understood by what the
    /// speaker had in view, and lands at the time it was said.
    /// </summary>
    /// <param name="seen">The visit as it was in the last reply the speaker had: an earlier state of the same log.</param>
    Turn Take(VisitState state, VisitState seen, InboundMessage message) => Take(state, message);

    /// <summary>How the visit stands, for those who only watch; it asks nothing, and nothing happens by it.</summary>
    Reply Summary(VisitState state, DateTimeOffset now) => Take(state, new("", "", "", "", now, "status")).Reply with { Cautions = [], Ask = null, Choices = [], AskedFact = null };

    /// <summary>The answer to a question that belongs to no visit, or null where the message is none.</summary>
    Reply? Answer(InboundMessage message, UnitSystem units) => null;
}
