using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Sums;

/// <summary>How far suction vapour is above its dew point.</summary>
public static class Superheat
{
    /// <summary>
    /// T(line) - T_dew(p), K. Negative where the readings cannot both be right: wet vapour reads 0. Null where the pressure lies
    /// outside the refrigerant's table. Source: definition; dew point by EN 12900 and AHRI 540 (from memory).
    /// </summary>
    /// <param name="line">Temperature of the suction line where the superheat is wanted.</param>
    /// <param name="suction">Absolute pressure at that place.</param>
    public static TemperatureDifference? Of(CelsiusTemperature line, AbsolutePressure suction, Refrigerant refrigerant) =>
        refrigerant.Saturation.TryDewTemperature(suction, out var dew) ? line - dew : null;
}
