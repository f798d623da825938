using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Tests.Support;

/// <summary>A dialogue that answers each message with how many events the visit had before it.</summary>
internal sealed class CountingEngine : ITurnEngine
{
    private int taken;

    public int Taken => taken;

    public Turn Open(VisitOpened opened) => Of(VisitState.Empty, "What does the display read?", opened);

    public Turn Take(VisitState state, InboundMessage message)
    {
        Interlocked.Increment(ref taken);
        return Of(
            state,
            $"{message.Text} after {state.Version}",
            new MessageHeard(message.MessageId, message.Channel, message.Text) { At = message.At, By = message.Person });
    }

    public static Reply Saying(string text) => new(new(text, text), [], [], null, [], null, [], null, []);

    private static Turn Of(VisitState state, string say, VisitEvent happened) => new([happened], state.Apply(happened), Saying(say));
}
