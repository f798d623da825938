using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Understanding;

/// <summary>What a message says of a refrigerant cylinder; whatever it does not say is null.</summary>
public sealed record CylinderTold
{
    /// <summary>The tag, in capitals.</summary>
    public string? Tag { get; init; }

    /// <summary>True where a cylinder is spoken of at all.</summary>
    public bool NamesCylinder { get; init; }

    /// <summary>True where the words say that it is a recovery cylinder.</summary>
    public bool IsRecovery { get; init; }

    public string? Refrigerant { get; init; }

    public Grams? Tare { get; init; }

    public Grams? Before { get; init; }

    public Grams? After { get; init; }

    /// <summary>A weight on the scale, before or after by what is known already.</summary>
    public Grams? Weighs { get; init; }

    /// <summary>What went in or came out.</summary>
    public Grams? Amount { get; init; }

    /// <summary>What was lost in the hoses.</summary>
    public Grams? Loss { get; init; }

    public Grams? WaterCapacity { get; init; }

    /// <summary>A mass whose meaning is not said.</summary>
    public Grams? Unnamed { get; init; }

    public EntryPurpose? Purpose { get; init; }

    /// <summary>Why it is done, in the log's words: top-up, after-repair, new-installation, retrofit or seasonal.</summary>
    public string? Reason { get; init; }

    /// <summary>True where a mass stands with its unit, so that nothing else can be meant by the numbers.</summary>
    public bool HasMassUnit { get; init; }

    /// <summary>True where a number could not be taken as it stands.</summary>
    public bool IsOpen { get; init; }

    /// <summary>"I can't read it".</summary>
    public bool IsUnknown { get; init; }

    /// <summary>True where a mass is said.</summary>
    public bool HasMass => (Tare ?? Before ?? After ?? Weighs ?? Amount ?? Loss ?? WaterCapacity ?? Unnamed) is not null;
}
