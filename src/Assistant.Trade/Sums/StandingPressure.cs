using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Sums;

/// <summary>The pressure of a system at rest, temperatures levelled.</summary>
public static class StandingPressure
{
    /// <summary>The bubble pressure at the coldest place with liquid; null outside the refrigerant's table. Source: saturation.</summary>
    public static AbsolutePressure? Expected(Refrigerant refrigerant, CelsiusTemperature coldestLiquid) =>
        refrigerant.Saturation.TryBubblePressure(coldestLiquid, out var pressure) ? pressure : null;

    /// <summary>
    /// Compares a levelled pressure with the refrigerant's own. A blend whose liquid is nearly gone stands between bubble and dew, so
    /// down to the dew pressure there may still be liquid. Null outside the table.
    /// </summary>
    /// <param name="reading">How far gauge and thermometer together may be out, K of saturation.</param>
    public static StandingVerdict? Judge(Refrigerant refrigerant, AbsolutePressure read, CelsiusTemperature coldestLiquid, TemperatureDifference reading)
    {
        var table = refrigerant.Saturation;
        if (!table.TryBubblePressure(coldestLiquid + reading, out var high) || !table.TryDewPressure(coldestLiquid - reading, out var low))
        {
            return null;
        }

        return read > high ? StandingVerdict.Above : read < low ? StandingVerdict.Below : StandingVerdict.Saturated;
    }
}

public enum StandingVerdict
{
    /// <summary>No liquid left, or colder liquid somewhere else.</summary>
    Below,

    /// <summary>Liquid and its own vapour, nothing else to be seen.</summary>
    Saturated,

    /// <summary>Noncondensable gas, or another refrigerant.</summary>
    Above,
}
