namespace Assistant.Trade.Ledgers;

/// <summary>Where the refrigerant went or came from between two readings of the scale.</summary>
public enum EntryPurpose
{
    /// <summary>From the cylinder into an asset.</summary>
    Charge,

    /// <summary>From an asset into the cylinder.</summary>
    Recover,

    /// <summary>Out of the cylinder and lost in purging or parting hoses.</summary>
    HoseLoss,

    /// <summary>Between two cylinders; each of the two has its own entry with its own weights.</summary>
    Transfer,
}
