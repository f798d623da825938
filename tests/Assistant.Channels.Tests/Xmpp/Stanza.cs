using System.Xml.Linq;

namespace Assistant.Channels.Tests.Xmpp;

/// <summary>A stanza as a server sends it, its usual namespaces put in.</summary>
internal static class Stanza
{
    public static XElement Of(string xml) => XElement.Parse(Namespaced(xml));

    public static string Namespaced(string xml)
    {
        var end = xml.IndexOfAny([' ', '>', '/']);
        return xml[..end] + " xmlns='jabber:component:accept'" + xml[end..]
            .Replace("<x>", "<x xmlns='http://jabber.org/protocol/muc#user'>", StringComparison.Ordinal)
            .Replace("<delay ", "<delay xmlns='urn:xmpp:delay' ", StringComparison.Ordinal)
            .Replace("<stanza-id ", "<stanza-id xmlns='urn:xmpp:sid:0' ", StringComparison.Ordinal)
            .Replace("<occupant-id ", "<occupant-id xmlns='urn:xmpp:occupant-id:0' ", StringComparison.Ordinal);
    }
}
