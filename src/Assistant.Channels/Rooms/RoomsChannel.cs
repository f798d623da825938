using Assistant.Channels.Xmpp;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Rooms;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Rooms;

/// <summary>Puts together what every channel of rooms needs.</summary>
public static class RoomsChannel
{
    /// <param name="hasXmpp">True where the program sits in rooms of a chat server.</param>
    public static void AddRooms(this IServiceCollection services, EventLog log, ConversationService conversations, ITurnEngine engine, PhraseBook book, bool hasXmpp)
    {
        var rooms = new RoomStore(log.Database);
        services.AddSingleton(log);
        services.AddSingleton(rooms);
        services.AddSingleton(new ReplyOutbox(log.Database));
        services.AddSingleton(provider => new RoomDesk(log, conversations, provider.GetRequiredService<TimeProvider>()));
        services.AddHostedService(provider =>
        {
            var clock = provider.GetRequiredService<TimeProvider>();
            var summaries = new RoomSummaries(log.Database, new(engine, book), provider.GetRequiredService<IRoomPoster>());
            var reminders = new RoomReminders(log, conversations, engine, book, hasXmpp ? XmppSettings.Channel : null, clock);
            return new RoomTeller(log, rooms, new(engine, book), summaries, reminders, RoomPace.Usual, clock, provider.GetRequiredService<ILogger<RoomTeller>>());
        });
    }
}
