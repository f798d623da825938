using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using Assistant.Channels.Rooms;
using Assistant.Channels.Xmpp.Wire;

namespace Assistant.Channels.Xmpp.Muc;

/// <summary>Reads what was said out of a room's message: who said it, when, and whether it was said to us.</summary>
internal static class RoomMessageReader
{
    /// <summary>
    /// A room tells the time of what is past in whole seconds. The end of the second is taken: what was there within it was known, and what
    /// was said before it came before.
    /// </summary>
    private static readonly TimeSpan RoomSecond = TimeSpan.FromMilliseconds(999);

    /// <summary>The words, or null where the message brings none of anybody else's.</summary>
    /// <param name="now">When the message came in.</param>
    public static RoomWords? Read(XElement message, RoomSeat seat, DateTimeOffset now)
    {
        if (!Jid.TryParse((string?)message.Attribute("from"), out var from) || from.Resource is not { } nick || IsOwn(message, seat, nick)
            || ((string?)message.Element(XmppNames.Component + "body"))?.Trim() is not { Length: > 0 } body)
        {
            return null;
        }

        // Only while the room brings what was said before is its word taken for the time: in a live message anybody could have put it.
        var stamp = seat.IsCaughtUp ? null : Stamp(message, seat.Room);
        var account = stamp is null ? seat.Find(nick)?.Account : AccountThen(message, seat);
        var (text, isToUs) = Addressing.Read(body, seat.Nick);
        return new(
            IdOf(message, seat.Room, account?.ToString() ?? nick, body, stamp),
            seat.Room,
            nick,
            account,
            stamp + RoomSecond is { } then && then < now ? then : now,
            text.Length <= XmppSettings.LongestText ? text : text[..XmppSettings.LongestText],
            isToUs,
            message.Element(XmppNames.Correction + "replace") is not null);
    }

    /// <summary>True for what we said ourselves, now or before.</summary>
    public static bool IsOwn(XElement message, RoomSeat seat, string nick) =>
        seat.OwnId is { } own && OccupantIdOf(message) is { } speaker ? own == speaker : nick == seat.Nick;

    // The nick may have been another's then: the room's lasting name for the speaker says who it was, or what its archive kept.
    private static Jid? AccountThen(XElement message, RoomSeat seat)
    {
        if (OccupantIdOf(message) is { } id && seat.FindById(id) is { Account: { } known })
        {
            return known;
        }

        // The archive puts the account last, behind whatever the speaker put there.
        var told = message.Elements(XmppNames.MucUser + "x").LastOrDefault()?.Element(XmppNames.MucUser + "item");
        return seat.ShowsAccounts && StanzaIdOf(message, seat.Room) is not null && Jid.TryParse((string?)told?.Attribute("jid"), out var jid) ? jid.Bare : null;
    }

    private static string IdOf(XElement message, Jid room, string who, string body, DateTimeOffset? stamp)
    {
        if (StanzaIdOf(message, room) is { } given)
        {
            return $"{room} {given}";
        }

        var own = (string?)message.Attribute("id") is { Length: > 0 } id ? id : stamp is { } time ? string.Create(CultureInfo.InvariantCulture, $"{time.ToUnixTimeSeconds()} {body}") : Guid.NewGuid().ToString("N");
        return $"{room} {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{who}\n{own}")).AsSpan(0, 16))}";
    }

    private static string? StanzaIdOf(XElement message, Jid room) => message.Elements(XmppNames.StanzaId + "stanza-id")
        .Where(i => (string?)i.Attribute("by") == room.ToString()).Select(i => (string?)i.Attribute("id")).FirstOrDefault(i => i is { Length: > 0 and <= 200 });

    private static string? OccupantIdOf(XElement message) => (string?)message.Element(XmppNames.OccupantId + "occupant-id")?.Attribute("id");

    private static DateTimeOffset? Stamp(XElement message, Jid room) => message.Elements(XmppNames.Delay + "delay")
        .Where(d => (string?)d.Attribute("from") is not { } from || from == room.ToString() || from == room.Domain)
        .Select(d => DateTimeOffset.TryParse((string?)d.Attribute("stamp"), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) ? at : (DateTimeOffset?)null)
        .LastOrDefault(at => at is not null);
}
