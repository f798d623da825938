using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>Puts the XMPP channel together.</summary>
public static class XmppChannel
{
    /// <summary>A chat server that is there again is found within seconds, and a reply is worth being late: patience for days.</summary>
    private static readonly DeliveryOptions Patience = new() { FirstWait = TimeSpan.FromSeconds(2), LongestWait = TimeSpan.FromMinutes(5), Attempts = 1000 };

    /// <param name="places">The file in which an earlier release kept up to where each room was listened to.</param>
    public static void AddXmpp(
        this IServiceCollection services, XmppSettings settings, string places, EventLog log, ConversationService conversations, ITurnEngine engine, PhraseBook book, PeopleService people)
    {
        services.AddHostedService(provider =>
        {
            var clock = provider.GetRequiredService<TimeProvider>();
            var logger = provider.GetRequiredService<ILogger<XmppService>>();
            var desk = new XmppDesk(log, conversations, new(log, engine, book, people), book, people, settings, clock, logger);
            var line = new XmppLine(settings, new(new(log.Database, XmppSettings.Channel), places), desk, XmppPace.Usual, clock, logger);
            return new XmppService(settings, line, new(new(log.Database), new XmppSender(line, settings), Patience, clock), XmppPace.Usual, clock, logger);
        });
    }
}
