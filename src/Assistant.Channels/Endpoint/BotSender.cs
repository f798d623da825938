using Assistant.Channels.Shaping;
using Assistant.Records.Outbox;
using Assistant.Records.Rooms;

namespace Assistant.Channels.Endpoint;

/// <summary>Delivers the outbox's replies of one channel behind the bot endpoint.</summary>
internal sealed class BotSender(string channel, BotPosts posts) : IReplySender
{
    private Dictionary<string, Room> rooms = [];

    public string Channel => channel;

    /// <summary>The channel's conversations as they are on record now.</summary>
    public void Know(IEnumerable<Room> known) => rooms = known.ToDictionary(r => r.Conversation, StringComparer.Ordinal);

    /// <summary>True as well for a conversation noted since: its replies wait a moment, and by then it is known.</summary>
    public bool Groups(string conversation) => !rooms.TryGetValue(conversation, out var room) || room.IsGroup;

    public async Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(item);
        return rooms.TryGetValue(item.Conversation, out var room)
            ? await posts.SendAsync(room, ReplyShaping.For(channel, item.Reply), cancellation)
            : new NotSent("it is not known how to write there");
    }
}
