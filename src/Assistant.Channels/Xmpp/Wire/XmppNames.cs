using System.Xml.Linq;

namespace Assistant.Channels.Xmpp.Wire;

/// <summary>The namespaces of what is spoken here, each with the document that defines it.</summary>
internal static class XmppNames
{
    /// <summary>XEP-0114: every stanza of a component's stream.</summary>
    public static readonly XNamespace Component = "jabber:component:accept";

    /// <summary>RFC 6120: the stream's own elements.</summary>
    public static readonly XNamespace Stream = "http://etherx.jabber.org/streams";

    /// <summary>RFC 6120: why a stream ends.</summary>
    public static readonly XNamespace StreamErrors = "urn:ietf:params:xml:ns:xmpp-streams";

    /// <summary>RFC 6120: why a stanza is refused.</summary>
    public static readonly XNamespace StanzaErrors = "urn:ietf:params:xml:ns:xmpp-stanzas";

    /// <summary>XEP-0045: what one who enters a room says.</summary>
    public static readonly XNamespace Muc = "http://jabber.org/protocol/muc";

    /// <summary>XEP-0045: what the room says of those in it.</summary>
    public static readonly XNamespace MucUser = "http://jabber.org/protocol/muc#user";

    /// <summary>XEP-0045: what a room's owner sets.</summary>
    public static readonly XNamespace MucOwner = "http://jabber.org/protocol/muc#owner";

    /// <summary>XEP-0004: forms.</summary>
    public static readonly XNamespace Form = "jabber:x:data";

    /// <summary>XEP-0203: when it was really said.</summary>
    public static readonly XNamespace Delay = "urn:xmpp:delay";

    /// <summary>XEP-0359: the room's own id of a message.</summary>
    public static readonly XNamespace StanzaId = "urn:xmpp:sid:0";

    /// <summary>XEP-0421: the same person in the same room, whatever the nick.</summary>
    public static readonly XNamespace OccupantId = "urn:xmpp:occupant-id:0";

    /// <summary>XEP-0308: a message that stands for an earlier one.</summary>
    public static readonly XNamespace Correction = "urn:xmpp:message-correct:0";

    /// <summary>XEP-0184: that a message was taken.</summary>
    public static readonly XNamespace Receipts = "urn:xmpp:receipts";

    /// <summary>XEP-0199.</summary>
    public static readonly XNamespace Ping = "urn:xmpp:ping";

    /// <summary>XEP-0030: what somebody is and can.</summary>
    public static readonly XNamespace DiscoInfo = "http://jabber.org/protocol/disco#info";

    /// <summary>XEP-0030: what belongs to somebody.</summary>
    public static readonly XNamespace DiscoItems = "http://jabber.org/protocol/disco#items";
}
