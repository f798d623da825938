using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Turns;

/// <summary>The dialogue as a pure function: a state and a message give events and a reply. No clock, no ids, no I/O.</summary>
public interface ITurnEngine
{
    /// <summary>Opens a visit: the events that begin it and the first question.</summary>
    /// <param name="opened">Where and on what; its <see cref="VisitEvent.At"/> is the visit's start.</param>
    Turn Open(VisitOpened opened);

    /// <summary>Takes one message.</summary>
    Turn Take(VisitState state, InboundMessage message);
}
