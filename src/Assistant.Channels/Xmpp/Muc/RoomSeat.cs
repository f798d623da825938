using System.Xml.Linq;
using Assistant.Channels.Xmpp.Wire;

namespace Assistant.Channels.Xmpp.Muc;

/// <summary>Our seat in one room and those beside us, as the room's presences tell it (XEP-0045). Taken up anew with each stream.</summary>
internal sealed class RoomSeat
{
    private const int MostNicks = 9;

    private readonly Dictionary<string, Occupant> occupants = new(StringComparer.Ordinal);
    private readonly string usualNick;
    private int tries;

    public RoomSeat(Jid room, string nick) => (Room, Nick, usualNick) = (room, nick, nick);

    public Jid Room { get; }

    /// <summary>What we are called in it, or ask to be called.</summary>
    public string Nick { get; private set; }

    public bool IsIn { get; private set; }

    /// <summary>True once all that was said before is in: the subject ends it (XEP-0045, section 7.1).</summary>
    public bool IsCaughtUp { get; private set; }

    /// <summary>True where the room shows everybody's account (status 100).</summary>
    public bool ShowsAccounts { get; private set; }

    /// <summary>Our own lasting name in the room, or null.</summary>
    public string? OwnId { get; private set; }

    public Jid Own => Room with { Resource = Nick };

    public Occupant? Find(string who) => occupants.GetValueOrDefault(who);

    public Occupant? FindById(string id) => occupants.Values.FirstOrDefault(o => o.Id == id);

    public void CatchUp() => IsCaughtUp = IsIn;

    /// <summary>We ask to be let in, as somebody who is not there yet.</summary>
    public void Begin()
    {
        occupants.Clear();
        (IsIn, IsCaughtUp, ShowsAccounts, OwnId) = (false, false, false, null);
    }

    /// <summary>The next name to try where one is taken; false where none is left.</summary>
    public bool TakeAnotherNick()
    {
        tries++;
        Nick = tries < MostNicks ? $"{usualNick}-{tries + 1}" : usualNick;
        tries %= MostNicks;
        return tries > 0;
    }

    /// <summary>Takes a presence that came from the room.</summary>
    public SeatChange Take(XElement presence)
    {
        var from = Jid.Parse((string?)presence.Attribute("from") ?? "");
        var told = presence.Element(XmppNames.MucUser + "x");
        var statuses = (told?.Elements(XmppNames.MucUser + "status") ?? []).Select(s => (string?)s.Attribute("code")).ToHashSet();
        switch ((string?)presence.Attribute("type"))
        {
            case "error":
                return Refused(presence);
            case "unavailable":
                return Gone(from.Resource ?? "", told, statuses);
            case null when from.Resource is { } who:
                return Here(who, presence, told, statuses);
            default:
                return new NoChange();
        }
    }

    private SeatChange Here(string who, XElement presence, XElement? told, HashSet<string?> statuses)
    {
        var account = Jid.TryParse((string?)told?.Element(XmppNames.MucUser + "item")?.Attribute("jid"), out var jid) ? jid.Bare : null;
        var occupant = new Occupant(who, account, (string?)presence.Element(XmppNames.OccupantId + "occupant-id")?.Attribute("id"));
        if (!statuses.Contains("110"))
        {
            occupants[who] = occupant;
            return new NoChange();
        }

        // The room may have given us another nick than we asked for (status 210).
        var wasIn = IsIn;
        (Nick, IsIn, OwnId) = (who, true, occupant.Id ?? OwnId);
        ShowsAccounts = ShowsAccounts || statuses.Contains("100");
        return wasIn ? new NoChange() : new Entered(statuses.Contains("201"));
    }

    private SeatChange Gone(string who, XElement? told, HashSet<string?> statuses)
    {
        occupants.Remove(who);
        if (who != Nick && !statuses.Contains("110"))
        {
            return new NoChange();
        }

        var item = told?.Element(XmppNames.MucUser + "item");
        if (statuses.Contains("303") && (string?)item?.Attribute("nick") is { Length: > 0 } renamed)
        {
            Nick = renamed;
            return new NoChange();
        }

        if (!IsIn)
        {
            return new NoChange();
        }

        Begin();
        var reason = (string?)item?.Element(XmppNames.MucUser + "reason") is { Length: > 0 and <= 200 } words ? $" (\"{words}\")" : "";
        return (told?.Element(XmppNames.MucUser + "destroy"), statuses) switch
        {
            ({ }, _) => new PutOut("the room was closed for good", MayReturn: false),
            (_, var s) when s.Contains("301") => new PutOut($"it is banned from the room{reason}", MayReturn: false),
            (_, var s) when s.Contains("321") || s.Contains("322") => new PutOut($"the room is for members now, and it is none{reason}", MayReturn: false),
            (_, var s) when s.Contains("307") && !s.Contains("333") => new PutOut($"it was sent out of the room{reason}", MayReturn: true),
            _ => new PutOut("the room lost it", MayReturn: true),
        };
    }

    private SeatChange Refused(XElement presence)
    {
        var error = presence.Element(XmppNames.Component + "error");
        var condition = error?.Elements().FirstOrDefault(e => e.Name.Namespace == XmppNames.StanzaErrors && e.Name.LocalName != "text")?.Name.LocalName ?? "undefined-condition";
        if (condition == "conflict")
        {
            return new NickTaken();
        }

        var wasIn = IsIn;
        Begin();
        var trouble = condition switch
        {
            "registration-required" => "the room is for members: make it a member",
            "forbidden" => "it is banned from the room",
            "not-authorized" => "the room asks for a password: take the password off and make the room one for members",
            "item-not-found" => "there is no such room, or its owner has not set it up yet",
            "not-allowed" => "rooms can not be made there: make the room first",
            "service-unavailable" => "the room is full",
            "remote-server-not-found" or "remote-server-timeout" => "there is no room service of that domain",
            _ => $"the room refuses ({condition})",
        };
        return wasIn ? new PutOut(trouble, MayReturn: true) : new NotLetIn(trouble);
    }
}
