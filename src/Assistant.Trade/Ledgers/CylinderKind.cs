namespace Assistant.Trade.Ledgers;

/// <summary>What a cylinder is for.</summary>
public enum CylinderKind
{
    /// <summary>Virgin or reclaimed refrigerant, filled by its supplier.</summary>
    Supply,

    /// <summary>Refrigerant taken out of appliances.</summary>
    Recovery,
}
