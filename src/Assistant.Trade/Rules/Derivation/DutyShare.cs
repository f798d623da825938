using Assistant.Trade.Facts;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>
/// What a sound compressor does at the pressures of the moment against what it does at design: first principles. A fixed
/// displacement fills with vapour of the suction's density, less the re-expansion of its clearance; each kilogram takes up heat
/// from the liquid's enthalpy to the vapour's, and gives off that and the work. TD and split are proportional to these.
/// </summary>
/// <param name="Evaporator">Cooling duty over the duty at design; 1 where it cannot be told.</param>
/// <param name="Condenser">Heat to be rejected over that at design; 1 where it cannot be told.</param>
/// <param name="ValveDemand">
/// Opening the expansion valve would need for this flow at this pressure drop, over its opening at design; NaN where it cannot be
/// told. Valves are chosen a quarter to a half too large: about there one stands wide open, and the superheat climbs for want of
/// pressure, not for a fault of the valve.
/// </param>
internal readonly record struct DutyShare(double Evaporator, double Condenser, double ValveDemand)
{
    /// <summary>Ambient for which an air-cooled condenser's design split is given, 95 degF / 35 degC: common practice.</summary>
    private const double DesignAmbient = 35;

    /// <summary>Clearance volume of a small reciprocating compressor over its displacement, 4 %: common practice.</summary>
    private const double Clearance = 0.04;

    /// <summary>Isentropic work over work put into the gas, 0.65: common practice for small compressors.</summary>
    private const double Efficiency = 0.65;

    /// <summary>Exponent of the re-expansion, close to isentropic for these vapours: common practice.</summary>
    private const double Expansion = 1.1;

    /// <summary>Liquid leaves the condenser about 3 K below its bubble point: common practice.</summary>
    private const double DesignSubcooling = 3;

    /// <summary>Outside a tenth and twice the design duty the reckoning is not trusted: common practice.</summary>
    private const double LeastDuty = 0.1;
    private const double MostDuty = 2;

    /// <summary>A cylinder fills to a fifth at the least: below it the law of the clearance does not hold. Common practice.</summary>
    private const double LeastFilling = 0.2;

    public static DutyShare Of(PlantState state)
    {
        var suction = state.Suction.IsKnown ? state.Suction.Value : state.Evaporator.Value - TradeValues.SuctionLineDrop.Kelvins;
        if (double.IsNaN(suction) || state.Refrigerant?.Saturation is not { } table)
        {
            return new(1, 1, double.NaN);
        }

        var box = state.Degrees(FactCatalogue.Setpoint) ?? (state.IsFreezer ? TradeValues.FreezerBox.Degrees : TradeValues.CoolerBox.Degrees);
        var condensing = state.Condensing.IsKnown ? state.Condensing.Value : DesignAmbient + state.DesignSplit;
        var liquid = state.Temperature(FactCatalogue.LiquidLineTemperature);
        var designCondensing = DesignAmbient + state.DesignSplit;
        return At(table, suction, condensing, liquid.IsKnown ? liquid.Value : condensing - DesignSubcooling) is { } now
            && At(table, box - state.DesignTd - TradeValues.SuctionLineDrop.Kelvins, designCondensing, designCondensing - DesignSubcooling) is { } design
            ? new(Math.Clamp(now.Cooling / design.Cooling, LeastDuty, MostDuty), Math.Clamp(now.Rejection / design.Rejection, LeastDuty, MostDuty), state.Condensing.IsKnown ? now.Opening / design.Opening : double.NaN)
            : new(1, 1, double.NaN);
    }

    // Watts for a displacement of one cubic metre a second: only their ratios are used.
    private static (double Cooling, double Rejection, double Opening)? At(SaturationTable table, double suction, double condensing, double liquid)
    {
        var range = table.Temperatures;
        if (!range.Contains(new(suction)) || !range.Contains(new(condensing)) || !range.Contains(new(liquid)) || condensing <= suction)
        {
            return null;
        }

        var low = table.DewPressure(new(suction)).Pascals;
        var ratio = table.DewPressure(new(condensing)).Pascals / low;
        var density = table.VapourDensity(new(suction)).KilogramsPerCubicMeter;
        var filling = Math.Max(LeastFilling, 1 + Clearance - (Clearance * Math.Pow(ratio, 1 / Expansion)));
        var taken = table.VapourEnthalpy(new(suction)).JoulesPerKilogram - table.LiquidEnthalpy(new(liquid)).JoulesPerKilogram;
        var work = low / density * Math.Log(ratio) / Efficiency;
        var flow = density * filling;
        var opening = flow / Math.Sqrt(low * (ratio - 1) * table.LiquidDensity(new(liquid)).KilogramsPerCubicMeter);
        return (flow * taken, flow * (taken + work), opening);
    }
}
