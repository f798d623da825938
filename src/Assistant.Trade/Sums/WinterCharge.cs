using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>
/// What must be added beyond a clear glass so that the head still holds on the coldest design day.
/// A clear glass with the head at its setting already holds today's flooding.
/// </summary>
/// <param name="FloodedToday">Share of the condenser full of liquid now, 0 to 1.</param>
/// <param name="FloodedColdest">The same on the coldest design day.</param>
/// <param name="Extra">(F coldest - F today) * V * (rho_liquid - rho_vapour), never below 0.</param>
public sealed record WinterCharge(double FloodedToday, double FloodedColdest, Mass Extra)
{
    /// <summary>
    /// The winter amount; null where a temperature lies outside the refrigerant's table. The flooded liquid is subcooled: its density
    /// is taken midway between the condensing temperature and the coldest ambient. Source: first principles.
    /// </summary>
    /// <param name="held">The condensing temperature the control holds, dew.</param>
    /// <param name="designSplit">Split at design rejection.</param>
    public static WinterCharge? Of(
        Refrigerant refrigerant,
        CelsiusTemperature held,
        TemperatureDifference designSplit,
        CelsiusTemperature ambientToday,
        CelsiusTemperature coldestAmbient,
        Volume condenser)
    {
        var table = refrigerant.Saturation;
        var midway = coldestAmbient + ((held - coldestAmbient) * 0.5);
        if (!table.Temperatures.Contains(held) || !table.Temperatures.Contains(midway))
        {
            return null;
        }

        var today = FloodedCondenser.Fraction(held, designSplit, ambientToday);
        var coldest = FloodedCondenser.Fraction(held, designSplit, coldestAmbient);
        var replaced = table.LiquidDensity(midway) - table.VapourDensity(held);
        return new(today, coldest, replaced * condenser * Math.Max(0, coldest - today));
    }
}
