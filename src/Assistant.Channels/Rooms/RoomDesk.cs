using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Rooms;

namespace Assistant.Channels.Rooms;

/// <summary>
/// Takes what is said in a room. Said to the assistant it is always answered; said beside it, only where the room is on a visit and the
/// words answer what is open, bring a reading or are a command. The reply goes into the outbox in one commit with what it answers.
/// </summary>
public sealed class RoomDesk(EventLog log, ConversationService conversations, TimeProvider clock)
{
    private const int MostLooks = 20;

    /// <summary>An attempt that began before this and has not ended is one that broke.</summary>
    private static readonly TimeSpan Recent = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(100);

    private readonly ReplyOutbox outbox = new(log.Database);
    private readonly RoomStore rooms = new(log.Database);

    /// <summary>True where words not said to the assistant may still be for the room's visit.</summary>
    public Task<bool> IsOnVisitAsync(InboundMessage message, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(message);
        return conversations.IsOnVisitAsync(message.Channel, message.Conversation, message.At, cancellation);
    }

    public async Task TakeAsync(InboundMessage message, bool isToUs, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(message);

        await UntilKnownAsync(message, cancellation);

        // What was said is understood by what the speaker had before their eyes then: two who answer one question within moments, or
        // one who answers while the program is away, answer that question.
        var seen = await outbox.SeenAsync(message.Channel, message.Conversation, message.At, cancellation);
        if (await rooms.FindAsync(message.Channel, message.Conversation, cancellation) is { VisitId: { } visit, Told: > 0 and var told } && seen?.VisitId != visit)
        {
            // It came to a visit under way, and what it was told of it then has not arrived yet.
            seen = new(visit, told);
        }

        var said = message with { At = TimeZoneInfo.ConvertTime(message.At, clock.LocalTimeZone) };
        await (isToUs ? conversations.HandleLateAsync(said, seen, cancellation) : (Task)conversations.HandleOverheardAsync(said, seen, cancellation));
    }

    // A post may be read, and answered, before its service has said that it is there.
    private async Task UntilKnownAsync(InboundMessage message, CancellationToken cancellation)
    {
        for (var look = 0; look < MostLooks && await outbox.IsUnderWayAsync(message.Channel, message.Conversation, message.At - Recent, cancellation); look++)
        {
            await Task.Delay(BetweenLooks, clock, cancellation);
        }
    }
}
