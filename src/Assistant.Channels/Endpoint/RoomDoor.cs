using System.Collections.Concurrent;
using Assistant.Channels.Bots;
using Assistant.Channels.Rooms;
using Assistant.Channels.Shaping;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Assistant.Records.Rooms;
using Microsoft.Bot.Builder;
using Microsoft.Bot.Schema;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Endpoint;

/// <summary>
/// Stands behind <see cref="SpeakerDoor"/>: notes how a conversation is written to unasked, puts it on a visit at "join", and takes what is
/// said where several people read it. Their replies go through the outbox, several within moments as one.
/// </summary>
public sealed partial class RoomDoor(EventLog log, RoomDesk desk, VisitJoining joining, TimeProvider clock, ILogger<RoomDoor> logger) : IMiddleware
{
    private const int MostNoted = 10_000;

    private readonly RoomStore rooms = new(log.Database);
    private readonly ReplyOutbox outbox = new(log.Database);
    private readonly ConcurrentDictionary<(string Channel, string Conversation), string?> noted = new();

    public async Task OnTurnAsync(ITurnContext turnContext, NextDelegate next, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(turnContext);
        ArgumentNullException.ThrowIfNull(next);
        switch (turnContext.Activity)
        {
            case { Type: ActivityTypes.ConversationUpdate, MembersRemoved: { } gone, Recipient: { } self } update when gone.Any(m => m.Id == self.Id):
                await LeaveAsync(update, cancellationToken);
                break;
            case { Type: ActivityTypes.Message } said when !await TakeAsync(turnContext, said, cancellationToken):
                await next(cancellationToken);
                break;
            case { Type: not ActivityTypes.Message }:
                await next(cancellationToken);
                break;
        }
    }

    /// <returns>False where the bot answers it in its turn.</returns>
    private async Task<bool> TakeAsync(ITurnContext turn, Activity activity, CancellationToken cancellation)
    {
        var message = ActivityReader.Read(activity, clock.GetUtcNow());
        var isAtOnce = activity.Conversation?.IsGroup is not true || activity.DeliveryMode == DeliveryModes.ExpectReplies;
        var isToUs = ActivityReader.IsToUs(activity);
        await NoteAsync(activity, cancellation);
        if (await joining.TakeAsync(message.Text, turn.TurnState.Get<Person>(), message.Person, message.Channel, message.Conversation, cancellation) is { } joined)
        {
            await (isAtOnce
                ? turn.SendActivityAsync(ReplyShaping.For(message.Channel, joined.Reply), cancellation)
                : outbox.AddAsync(new(message.Channel, message.Conversation, message.MessageId, joined.Reply, message.At, joined.Seen), cancellation));
            return true;
        }

        if (message.Text.Length == 0 || (!isToUs && !await desk.IsOnVisitAsync(message, cancellation)))
        {
            return true;
        }

        if (isAtOnce)
        {
            return false;
        }

        await desk.TakeAsync(message, isToUs, cancellation);
        return true;
    }

    private async Task NoteAsync(Activity activity, CancellationToken cancellation)
    {
        // A caller that wants its answers in the response has no place of its own to be written to.
        if (activity.DeliveryMode == DeliveryModes.ExpectReplies)
        {
            return;
        }

        var room = BotReference.Of(activity);
        if (room.Conversation.Length == 0 || (noted.TryGetValue((room.Channel, room.Conversation), out var before) && before == room.Reference))
        {
            return;
        }

        await rooms.SaveAsync(room, cancellation);
        if (noted.Count < MostNoted)
        {
            noted[(room.Channel, room.Conversation)] = room.Reference;
        }
    }

    private async Task LeaveAsync(Activity update, CancellationToken cancellation)
    {
        var conversation = update.Conversation?.Id ?? "";
        noted.TryRemove((update.ChannelId, conversation), out _);
        await rooms.ForgetAsync(update.ChannelId, conversation, clock.GetUtcNow(), "the bot was removed from the conversation", cancellation);
        Removed(logger, update.ChannelId);
    }

    [LoggerMessage(LogLevel.Warning, "Bot: it was removed from a conversation on {Channel}, which is on no visit any more")]
    private static partial void Removed(ILogger logger, string channel);
}
