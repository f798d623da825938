namespace Assistant.Channels.Xmpp.Muc;

/// <summary>Somebody in a room.</summary>
/// <param name="Account">The account behind the nick, or null where the room hides it.</param>
/// <param name="Id">The room's own lasting name for them (XEP-0421), or null where it has none.</param>
internal sealed record Occupant(string Nick, Jid? Account, string? Id);
