using System.Collections.Immutable;

namespace Assistant.Channels.Xmpp;

/// <summary>How the program takes part in a firm's own chat, as an external component of its server (XEP-0114).</summary>
/// <param name="Server">The host on which the server takes components; the stream to it is not encrypted.</param>
/// <param name="Port">The server's port for components, usually 5347.</param>
/// <param name="Domain">The component's own domain, such as coldwalk.chat.example.</param>
/// <param name="Secret">What the component proves itself with.</param>
/// <param name="Rooms">The rooms it sits in.</param>
/// <param name="Nick">What it is called there and answers to.</param>
public sealed record XmppSettings(string Server, int Port, string Domain, string Secret, ImmutableArray<Jid> Rooms, string Nick = "Coldwalk")
{
    /// <summary>The name under which conversations by XMPP are kept.</summary>
    public const string Channel = "xmpp";

    /// <summary>Longer messages are cut: nobody types a reading of this length, and the store keeps what is said.</summary>
    public const int LongestText = 2000;

    /// <summary>Where people write to it directly.</summary>
    public Jid Self => new("coldwalk", Domain, null);

    /// <summary>The address it sits in rooms with.</summary>
    public Jid Seat => Self with { Resource = "room" };
}
