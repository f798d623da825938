namespace Assistant.Trade.Ledgers;

/// <summary>Why an entry was not taken into the ledger.</summary>
public enum RefusalReason
{
    /// <summary>No cylinder of that tag is in the ledger.</summary>
    UnknownCylinder,

    /// <summary>A weight is below zero, or a gross weight below the tare: the contents would be negative.</summary>
    NegativeContents,

    /// <summary>The scale moved against the purpose, such as a charge after which the cylinder is heavier.</summary>
    WrongDirection,

    /// <summary>A charge or a recovery without an asset.</summary>
    AssetMissing,

    /// <summary>The entry's tare is not the cylinder's: a misread tare or another cylinder.</summary>
    TareDiffers,

    /// <summary>The cylinder would hold more liquid than it may.</summary>
    OverFull,

    /// <summary>Another entry has this id and other content.</summary>
    IdTaken,
}

/// <summary>An entry refused, with the numbers the refusal rests on.</summary>
/// <param name="Found">The mass that is wrong, where the reason is one of mass.</param>
/// <param name="Limit">The mass that would be right: the most the cylinder may hold, its tare, or the gross before.</param>
public sealed record Refusal(RefusalReason Reason, CylinderEntry Entry, Grams? Found = null, Grams? Limit = null);
