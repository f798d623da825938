namespace Assistant.Trade.Ledgers;

/// <summary>A refrigerant cylinder, known by the tag it wears.</summary>
/// <param name="Tag">The tag or serial number; compared without regard to case.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Refrigerant">The refrigerant on its label; null for a recovery cylinder not yet labelled.</param>
/// <param name="Tare">The empty weight stamped on it.</param>
public sealed record Cylinder(string Tag, CylinderKind Kind, string? Refrigerant, Grams Tare)
{
    /// <summary>The mass of water it would hold ("WC" on the collar), where it is known.</summary>
    public Grams? WaterCapacity { get; init; }
}
