using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Rooms;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Rooms;

/// <summary>Collects what came in elsewhere, one line a person and channel: "Lee by text: suction pressure 22 psig; Sam on the page: sight glass flashing".</summary>
internal sealed class RoomNewsLines(RoomWording wording, Room room, ImmutableArray<VisitEvent> events, VisitState after)
{
    private readonly List<(string Who, string From, List<string> What)> lines = [];
    private MessageHeard? heard;
    private bool isOwn;

    /// <summary>The last verdict, where it was found elsewhere.</summary>
    public VerdictGiven? Verdict { get; private set; }

    /// <summary>True where even one who only watches must hear of it.</summary>
    public bool IsUrgent { get; private set; }

    /// <summary>All of it, or null where there is none.</summary>
    public string? Text => lines.Count == 0 ? null : string.Join("; ", lines.Select(Say)) + ".";

    public void Take(VisitEvent happened)
    {
        switch (happened)
        {
            case MessageHeard message:
                (heard, isOwn) = (message, room.Holds(message.Channel, message.MessageId));
                break;
            case VerdictGiven given:
                Verdict = isOwn ? null : given;
                break;
            case PictureTaken picture:
                Add(picture.By, "page", Phrase("rooms.picture"));
                break;
            case PersonJoined joined:
                Add(joined.By, "", Phrase("rooms.joined", ("role", joined.Role)));
                break;
            case VisitPaused { IsEmergency: true } when !isOwn:
                IsUrgent = true;
                Add(happened.By, heard?.Channel ?? "", Phrase("rooms.emergency"));
                break;
            case { } said when !isOwn && heard is not null && What(said) is { } what:
                Add(said.By, heard.Channel, what);
                break;
        }
    }

    private string? What(VisitEvent said) => said switch
    {
        FactTaken taken when !after.Withdrawn.Contains(taken.Number) && RoomWording.Taken(taken) is { } value => wording.Fact(value),
        EventWithdrawn { InFavourOf: { } counts } when events[counts - 1] is FactTaken kept && RoomWording.Taken(kept) is { } value =>
            Phrase("rooms.settled", ("reading", wording.Fact(value)), ("person", kept.By)),
        EventWithdrawn { Withdrawn: var number } when number <= room.Told && Corrected(said, number) is { } value =>
            Phrase("rooms.took-back", ("fact", wording.Name(value.Fact)), ("value", wording.Value(value))),
        FaultMended mended => Phrase("rooms.mended", ("fault", "fault." + mended.Fault)),
        LeakFound leak => Phrase("rooms.leak", ("place", leak.Place)),
        ReadingRequested asked when Trade.Facts.FactCatalogue.Find(asked.Fact) is { } fact => Phrase("rooms.asked", ("fact", wording.Name(fact))),
        PersonLeft => Phrase("rooms.left"),
        HandedOver over => Phrase("rooms.handed-over", ("person", over.To)),
        VisitClosed => Phrase("rooms.closed"),
        _ => null,
    };

    // What takes its place in the same message is told by itself.
    private Trade.Facts.FactValue? Corrected(VisitEvent withdrawal, int number) =>
        events[number - 1] is FactTaken taken && !events.Skip(withdrawal.Number).TakeWhile(e => e is not MessageHeard).Any(e => e is FactTaken again && again.Fact == taken.Fact)
            ? RoomWording.Taken(taken)
            : null;

    private void Add(string who, string channel, string what)
    {
        var from = channel.Length == 0 ? "" : wording.From(channel);
        if (lines.FindIndex(l => l.Who == who && l.From == from) is >= 0 and var known)
        {
            lines[known].What.Add(what);
        }
        else
        {
            lines.Add((who, from, [what]));
        }
    }

    private string Say((string Who, string From, List<string> What) line)
    {
        var what = string.Join(", ", line.What.Distinct());
        return line.From.Length == 0
            ? Phrase("rooms.line-nowhere", ("who", line.Who), ("what", what))
            : Phrase("rooms.line", ("who", line.Who), ("from", line.From), ("what", what));
    }

    private string Phrase(string key, params ReadOnlySpan<Trade.Rules.ReasonPart> parts) => wording.Book.Say(key, UnitSystem.Us, parts).Full;
}
