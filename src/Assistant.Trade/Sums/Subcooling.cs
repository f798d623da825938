using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Sums;

/// <summary>How far liquid is below its bubble point.</summary>
public static class Subcooling
{
    /// <summary>
    /// T_bubble(p) - T(liquid), K. Null where the pressure lies outside the refrigerant's table. From the discharge gauge it reads
    /// high by the drop of condenser and head pressure valve. Source: definition; bubble point by common practice.
    /// </summary>
    /// <param name="pressure">Absolute pressure of the liquid, where it can be read; otherwise of the discharge.</param>
    public static TemperatureDifference? Of(CelsiusTemperature liquid, AbsolutePressure pressure, Refrigerant refrigerant) =>
        refrigerant.Saturation.TryBubbleTemperature(pressure, out var bubble) ? bubble - liquid : null;
}
