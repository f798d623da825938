using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding;

/// <summary>In what light a message is read: the fact just asked for, if any, and the site's units for bare numbers.</summary>
public sealed record UnderstandingContext(Fact? Expected, UnitSystem Units)
{
    /// <summary>Where the person stands, or null: "both fans" are those of that place.</summary>
    public Place? Place { get; init; }

    /// <summary>True while nothing of the room was told: "freezer at 18" then says what kind of room it is besides.</summary>
    public bool IsRoomUnknown { get; init; }
}
