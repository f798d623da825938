namespace Assistant.Dialogue.Visits;

/// <summary>What is known of a cylinder when a visit opens: from its last use on any visit.</summary>
/// <param name="Kind">supply or recovery.</param>
/// <param name="GrossGrams">The scale after its last use.</param>
public sealed record KnownCylinder(string Tag, string Kind, string? Refrigerant, long? TareGrams, long? GrossGrams, long? WaterCapacityGrams);

/// <summary>
/// What has been told of a cylinder so far, where it is not yet a whole use. Each event holds all of it: a later one replaces it.
/// </summary>
public sealed record CylinderNoted : VisitEvent
{
    /// <summary>Null while it is not said which cylinder.</summary>
    public string? Tag { get; init; }

    /// <summary>supply or recovery; null while neither was said.</summary>
    public string? CylinderKind { get; init; }

    /// <summary>Where the refrigerant goes, in the ledger's words, or null.</summary>
    public string? Purpose { get; init; }

    public string? Refrigerant { get; init; }

    /// <summary>Why it is done, where it was said.</summary>
    public string? Reason { get; init; }

    public long? TareGrams { get; init; }

    /// <summary>The scale before.</summary>
    public long? BeforeGrams { get; init; }

    /// <summary>The scale after.</summary>
    public long? AfterGrams { get; init; }

    /// <summary>What was said to have gone in or come out.</summary>
    public long? AmountGrams { get; init; }

    /// <summary>What was said to be lost in the hoses.</summary>
    public long? LossGrams { get; init; }

    /// <summary>The mass of water it would hold; 0 where nobody can read it.</summary>
    public long? WaterCapacityGrams { get; init; }

    /// <summary>True where the weight before was read on this visit and not left by another.</summary>
    public bool IsWeighedHere { get; init; }

    /// <summary>What is asked back for, or null: tag, tare, before, after, purpose, refrigerant, water-capacity.</summary>
    public string? Asks { get; init; }

    /// <summary>True where refrigerant has moved, so that it is to become a use.</summary>
    public bool IsUse => Purpose is not null || AfterGrams is not null || AmountGrams is not null || LossGrams is not null;
}
