using Assistant.Channels.Shaping;
using Assistant.Records.Outbox;

namespace Assistant.Channels.Xmpp;

/// <summary>Delivers replies to rooms and people. Each has an id of its own, the same at every attempt: what a room has already is not posted again.</summary>
internal sealed class XmppSender(XmppLine line, XmppSettings settings) : IReplySender
{
    public string Channel => XmppSettings.Channel;

    public bool Groups(string conversation) => Jid.TryParse(conversation, out var to) && settings.Rooms.Contains(to);

    public async Task<Sent> SendAsync(OutboxItem item, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (!Jid.TryParse(item.Conversation, out var to))
        {
            return new Records.Outbox.Refused("it is no address");
        }

        var text = ReplyShaping.TerminalText(item.Reply);
        if (text.Length == 0)
        {
            return new HandedOver();
        }

        var end = settings.Rooms.Contains(to)
            ? await line.PostAsync(to, PostId.Of(item), text, cancellation)
            : await line.WriteAsync(to, PostId.Of(item), text, cancellation);
        return end switch
        {
            PostEnd.There => new HandedOver(),
            PostEnd.NotThere => new NotSent("there is no line to the room"),
            PostEnd.Refused => new NotSent("it was not taken there"),
            _ => new InDoubt("the line broke before it was there"),
        };
    }
}
