using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Assistant.Channels.Xmpp.Wire;

/// <summary>The stanzas that are sent.</summary>
internal static class Stanzas
{
    /// <summary>Words in a room, or to one person.</summary>
    public static XElement Message(Jid from, Jid to, bool isRoom, string id, string body) => new(
        XmppNames.Component + "message",
        Addressed(from, to),
        new XAttribute("type", isRoom ? "groupchat" : "chat"),
        new XAttribute("id", id),
        new XElement(XmppNames.Component + "body", Sayable(body)));

    /// <summary>Enters a room.</summary>
    /// <param name="since">What was said from then on is wanted; null for nothing of it.</param>
    public static XElement Enter(Jid from, Jid seat, DateTimeOffset? since) => new(
        XmppNames.Component + "presence",
        Addressed(from, seat),
        new XElement(
            XmppNames.Muc + "x",
            new XElement(XmppNames.Muc + "history", since is { } time ? new XAttribute("since", Stamp(time)) : new XAttribute("maxstanzas", "0"))));

    /// <summary>Takes a room that was just made as it is (XEP-0045, section 10.1.2).</summary>
    public static XElement TakeAsItIs(Jid from, Jid room, string id) => Query(
        from, room, id, "set", new XElement(XmppNames.MucOwner + "query", new XElement(XmppNames.Form + "x", new XAttribute("type", "submit"))));

    public static XElement Ping(Jid from, Jid to, string id) => Query(from, to, id, "get", new XElement(XmppNames.Ping + "ping"));

    public static XElement Result(XElement query, XElement? content = null) => Answer(query, "result", content);

    /// <summary>A stanza that is refused; the conditions are those of RFC 6120, section 8.3.3.</summary>
    public static XElement Refusal(XElement stanza, string condition) => Answer(
        stanza, "error", new XElement(XmppNames.Component + "error", new XAttribute("type", "cancel"), new XElement(XmppNames.StanzaErrors + condition)));

    public static XElement Presence(Jid from, Jid to, string? type) =>
        new(XmppNames.Component + "presence", Addressed(from, to), type is null ? null : new XAttribute("type", type));

    /// <summary>Says that a message was taken, where its sender asks (XEP-0184); null where not.</summary>
    public static XElement? Receipt(XElement message) => message.Element(XmppNames.Receipts + "request") is null || (string?)message.Attribute("id") is not { } id
        ? null
        : new(
            XmppNames.Component + "message",
            new XAttribute("from", (string?)message.Attribute("to") ?? ""),
            new XAttribute("to", (string?)message.Attribute("from") ?? ""),
            new XElement(XmppNames.Receipts + "received", new XAttribute("id", id)));

    /// <summary>The characters that XML 1.0 can carry; others are left out.</summary>
    public static string Sayable(string text)
    {
        var kept = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (!rune.IsBmp || XmlConvert.IsXmlChar((char)rune.Value))
            {
                kept.Append(rune);
            }
        }

        return kept.ToString();
    }

    /// <summary>XEP-0082.</summary>
    public static string Stamp(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);

    private static XElement Query(Jid from, Jid to, string id, string type, XElement content) =>
        new(XmppNames.Component + "iq", Addressed(from, to), new XAttribute("type", type), new XAttribute("id", id), content);

    private static XElement Answer(XElement stanza, string type, XElement? content) => new(
        stanza.Name,
        stanza.Attribute("to") is { } to ? new XAttribute("from", to.Value) : null,
        stanza.Attribute("from") is { } from ? new XAttribute("to", from.Value) : null,
        stanza.Attribute("id") is { } id ? new XAttribute("id", id.Value) : null,
        new XAttribute("type", type),
        content);

    private static XAttribute[] Addressed(Jid from, Jid to) => [new("from", from.ToString()), new("to", to.ToString())];
}
