namespace Assistant.Trade.Ledgers;

/// <summary>One use of a cylinder: the scale before and after, and where the difference went.</summary>
public sealed record CylinderEntry
{
    /// <summary>Identifies the entry; the same entry heard twice counts once.</summary>
    public required string Id { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>The cylinder's tag.</summary>
    public required string Tag { get; init; }

    /// <summary>The empty weight as read for this entry.</summary>
    public required Grams Tare { get; init; }

    /// <summary>The scale before, cylinder and contents.</summary>
    public required Grams GrossBefore { get; init; }

    /// <summary>The scale after, cylinder and contents.</summary>
    public required Grams GrossAfter { get; init; }

    public required EntryPurpose Purpose { get; init; }

    /// <summary>The refrigerant that moved.</summary>
    public required string Refrigerant { get; init; }

    /// <summary>The asset charged or recovered from; a hose loss may name the one it was lost at.</summary>
    public string? AssetId { get; init; }

    /// <summary>What came into the cylinder; negative where it left.</summary>
    public Grams Gain => GrossAfter - GrossBefore;

    /// <summary>The contents after, by this entry's own tare.</summary>
    public Grams ContentsAfter => GrossAfter - Tare;
}
