using System.Globalization;
using Assistant.App.Commands;
using Assistant.Channels.Xmpp;

namespace Assistant.App.Hosting;

/// <summary>The firm's own chat server from the environment; without one there is no such channel.</summary>
internal static class XmppEnvironment
{
    private const string Server = "COLDWALK_XMPP_SERVER";
    private const string Domain = "COLDWALK_XMPP_DOMAIN";
    private const string Secret = "COLDWALK_XMPP_SECRET";
    private const string Rooms = "COLDWALK_XMPP_ROOMS";
    private const int UsualPort = 5347;

    /// <exception cref="CommandFailure">The settings are not whole.</exception>
    public static XmppSettings? Read()
    {
        var server = Named(Server);
        if (server.Length == 0)
        {
            return null;
        }

        var colon = server.LastIndexOf(':');
        var port = UsualPort;
        if (colon == 0 || (colon > 0 && (!int.TryParse(server[(colon + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out port) || port is 0 or > 65535)))
        {
            throw new CommandFailure($"{Server}: the host that takes components, and its port where it is not {UsualPort}, such as 127.0.0.1:{UsualPort}.");
        }

        if (!Jid.TryParse(Named(Domain), out var domain) || domain is { Local: not null } or { Resource: not null })
        {
            throw new CommandFailure($"{Domain}: the component's own domain, such as coldwalk.chat.example.");
        }

        if (Named(Secret).Length < 12)
        {
            throw new CommandFailure($"{Secret}: the component's secret, 12 characters or more.");
        }

        var rooms = Named(Rooms).Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Room);
        var nick = Named("COLDWALK_XMPP_NICK");
        return new(colon > 0 ? server[..colon] : server, port, domain.Domain, Named(Secret), [.. rooms], nick.Length > 0 ? nick : "Coldwalk");
    }

    private static Jid Room(string text) => Jid.TryParse(text, out var room) && room is { Local: not null, Resource: null }
        ? room
        : throw new CommandFailure($"{Rooms}: {text} is no room; they are written as service@rooms.chat.example, with a comma between.");

    private static string Named(string name) => Secrets.Read(name);
}
