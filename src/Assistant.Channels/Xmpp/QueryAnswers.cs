using System.Xml.Linq;
using Assistant.Channels.Xmpp.Wire;

namespace Assistant.Channels.Xmpp;

/// <summary>Answers what others ask of us: who we are, and whether we are there. Every query gets an answer (RFC 6120, section 8.2.3).</summary>
internal static class QueryAnswers
{
    /// <summary>The answer, or null for what is itself one.</summary>
    public static XElement? To(XElement query, XmppSettings settings)
    {
        if ((string?)query.Attribute("type") is not ("get" or "set"))
        {
            return null;
        }

        var asked = query.Elements().FirstOrDefault()?.Name;
        return asked == XmppNames.Ping + "ping" ? Stanzas.Result(query)
            : asked == XmppNames.DiscoInfo + "query" ? Stanzas.Result(query, Info(settings.Nick))
            : asked == XmppNames.DiscoItems + "query" ? Stanzas.Result(query, new(XmppNames.DiscoItems + "query"))
            : Stanzas.Refusal(query, "service-unavailable");
    }

    private static XElement Info(string name) => new(
        XmppNames.DiscoInfo + "query",
        new XElement(XmppNames.DiscoInfo + "identity", new XAttribute("category", "client"), new XAttribute("type", "bot"), new XAttribute("name", name)),
        new[] { XmppNames.DiscoInfo, XmppNames.DiscoItems, XmppNames.Ping, XmppNames.Muc, XmppNames.Correction, XmppNames.Receipts }
            .Select(f => new XElement(XmppNames.DiscoInfo + "feature", new XAttribute("var", f.NamespaceName))));
}
