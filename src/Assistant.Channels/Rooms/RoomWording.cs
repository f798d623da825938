using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Channels.Rooms;

/// <summary>Facts, people and channels as a room is told of them.</summary>
internal sealed class RoomWording(PhraseBook book)
{
    public PhraseBook Book => book;

    /// <summary>Such as "suction pressure 22 psig".</summary>
    public string Fact(FactValue value) => $"{Name(value.Fact)} {Value(value)}";

    /// <summary>Such as "by text".</summary>
    public string From(string channel) => book.Say(book.Has("rooms.from." + channel) ? "rooms.from." + channel : "rooms.from.other", UnitSystem.Us).Full;

    public string Name(Fact fact) => book.Word(fact.Name);

    /// <summary>A reading as it was said, never converted.</summary>
    public string Value(FactValue value) => value is Reading reading ? AmountText.Written(reading) : book.Word(((Observation)value).Value);

    /// <summary>A fact as an event took it; null where the event holds no value of it.</summary>
    public static FactValue? Taken(FactTaken taken) => FactCatalogue.Find(taken.Fact) is not { } fact ? null
        : taken is { Value: { } number, Unit: { } symbol } && FactUnits.Find(fact, symbol) is { } unit ? new Reading(fact, number, unit)
        : taken.Word is { } word ? new Observation(fact, word)
        : null;
}
