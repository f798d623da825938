using System.Threading.Channels;
using System.Xml.Linq;
using Assistant.Channels.Xmpp.Muc;
using Assistant.Channels.Xmpp.Wire;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>Takes the stanzas of a stream in the order they came: what is said in the rooms and directly, who comes and goes, what is asked.</summary>
internal sealed partial class StanzaTaker(XmppSettings settings, RoomPlaces places, RoomKeeper keeper, OpenPosts posts, IXmppTalk talk, TimeProvider clock, ILogger logger)
{
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);

    public async Task TakeAllAsync(ComponentStream stream, ChannelReader<XElement> stanzas, CancellationToken cancellation)
    {
        await foreach (var stanza in stanzas.ReadAllAsync(cancellation))
        {
            try
            {
                await TakeAsync(stream, stanza, cancellation);
            }
            catch (StreamBrokenException)
            {
                // The answer to it does not get out any more. Whoever listens has seen it, too.
            }
            catch (Exception failure) when (failure is not (OperationCanceledException or OutOfMemoryException))
            {
                // One stanza that can not be taken must not hold up all that come after it.
                NotTaken(logger, stanza.Name.LocalName, failure);
            }
        }
    }

    private async Task TakeAsync(ComponentStream stream, XElement stanza, CancellationToken cancellation)
    {
        var from = Jid.TryParse((string?)stanza.Attribute("from"), out var sender) ? sender : null;
        var type = (string?)stanza.Attribute("type");
        switch (stanza.Name.LocalName)
        {
            case "iq":
                if (QueryAnswers.To(stanza, settings) is { } answer)
                {
                    await stream.SendAsync(answer, cancellation);
                }

                if (type == "error")
                {
                    await keeper.TakeRefusalAsync(stream, stanza, cancellation);
                }

                break;
            case "presence" when from is not null && keeper.Seat(from.Bare) is { } seat:
                await keeper.TakeAsync(stream, seat, stanza, cancellation);
                break;
            case "presence" when from is not null && type == "subscribe":
                // Whoever wants to see whether it is there may.
                await stream.SendAsync(Stanzas.Presence(settings.Self, from.Bare, "subscribed"), cancellation);
                await stream.SendAsync(Stanzas.Presence(settings.Self, from.Bare, null), cancellation);
                break;
            case "message" when from is not null && keeper.Seat(from.Bare) is { } seat:
                await InRoomAsync(stream, seat, from, stanza, type, cancellation);
                break;
            case "message" when from is not null && type is null or "chat" or "normal":
                await DirectAsync(stream, from!, stanza, cancellation);
                break;
        }
    }

    private async Task InRoomAsync(ComponentStream stream, RoomSeat seat, Jid from, XElement message, string? type, CancellationToken cancellation)
    {
        if (type == "error")
        {
            await keeper.TakeRefusalAsync(stream, message, cancellation);
            return;
        }

        if (type != "groupchat")
        {
            if (message.Element(XmppNames.Component + "body") is not null)
            {
                // Whispered in a room: who it is may be hidden, and the others would not know what was said.
                await stream.SendAsync(Stanzas.Refusal(message, "not-acceptable"), cancellation);
            }

            return;
        }

        if (message.Element(XmppNames.Component + "body") is null && message.Element(XmppNames.Component + "subject") is not null)
        {
            seat.CatchUp();
        }
        else if (from.Resource is { } nick && RoomMessageReader.IsOwn(message, seat, nick))
        {
            var id = (string?)message.Attribute("id") ?? "";
            posts.Saw(seat.Room, id);
            await UntilStoredAsync(() => talk.PostedAsync(seat.Room, id, cancellation), cancellation);
        }
        else if (RoomMessageReader.Read(message, seat, clock.GetUtcNow()) is { } words && !places.Knows(words))
        {
            await UntilStoredAsync(() => talk.HearAsync(words, cancellation), cancellation);
            await places.PassAsync(words, cancellation);
        }
    }

    private async Task DirectAsync(ComponentStream stream, Jid from, XElement message, CancellationToken cancellation)
    {
        if (!Jid.TryParse((string?)message.Attribute("to"), out var to) || to.Bare != settings.Self)
        {
            await stream.SendAsync(Stanzas.Refusal(message, "item-not-found"), cancellation);
        }
        else if (((string?)message.Element(XmppNames.Component + "body"))?.Trim() is { Length: > 0 } body && from.Local is not null)
        {
            // Some programs count their messages, and begin anew: only a long id says that it is the same message again.
            var id = (string?)message.Attribute("id") is { Length: >= 8 and <= 200 } given ? $"{from.Bare} {given}" : Guid.NewGuid().ToString("N");
            var words = new DirectWords(id, from.Bare, clock.GetUtcNow(), body.Length <= XmppSettings.LongestText ? body : body[..XmppSettings.LongestText]);
            await UntilStoredAsync(() => talk.HearAsync(words, cancellation), cancellation);
            if (Stanzas.Receipt(message) is { } receipt)
            {
                await stream.SendAsync(receipt, cancellation);
            }
        }
    }

    // What was said waits for the records, and all that was said after it.
    private async Task UntilStoredAsync(Func<Task> hear, CancellationToken cancellation)
    {
        while (true)
        {
            try
            {
                await hear();
                return;
            }
            catch (Records.Storage.RecordsException busy)
            {
                Waits(logger, busy.Message);
                await Task.Delay(AfterFailure, clock, cancellation);
            }
        }
    }

    [LoggerMessage(LogLevel.Error, "Chat: a <{Kind}> could not be taken")]
    private static partial void NotTaken(ILogger logger, string kind, Exception failure);

    [LoggerMessage(LogLevel.Error, "Chat: what was said waits: {Message}")]
    private static partial void Waits(ILogger logger, string message);
}
