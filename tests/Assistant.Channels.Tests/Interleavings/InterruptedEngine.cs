using Assistant.Channels.Tests.Text;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>The real dialogue; once a turn is made, and before it is stored, others may say something that is stored first.</summary>
internal sealed class InterruptedEngine : ITurnEngine
{
    private Action? meanwhile;

    /// <summary>How many turns were made.</summary>
    public int Turns { get; private set; }

    /// <summary>Happens during the next turn, once.</summary>
    public void During(Action happens) => meanwhile = happens;

    public Turn Open(VisitOpened opened) => Spoken.Engine.Open(opened);

    public Turn Take(VisitState state, InboundMessage message) => Interrupted(Spoken.Engine.Take(state, message));

    public Turn Take(VisitState state, VisitState seen, InboundMessage message) => Interrupted(Spoken.Engine.Take(state, seen, message));

    public Reply? Answer(InboundMessage message, Trade.Quantities.UnitSystem units) => Spoken.Engine.Answer(message, units);

    private Turn Interrupted(Turn turn)
    {
        Turns++;
        var happens = meanwhile;
        meanwhile = null;
        happens?.Invoke();
        return turn;
    }
}
