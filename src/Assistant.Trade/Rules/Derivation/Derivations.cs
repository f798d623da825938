using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>The derived values a person is shown, from the same state the rules judge.</summary>
internal static class Derivations
{
    public static DerivedValues Of(PlantState state)
    {
        var superheat = Superheat(state, out var approximate);
        return new(
            Point(state.Suction.IsKnown ? state.Suction : state.Evaporator),
            Point(state.Condensing),
            Difference(superheat),
            approximate,
            Difference(Subcooling(state)),
            Difference(Split(state)),
            Difference(Td(state)),
            Ratio(state),
            FloodedFraction(state));
    }

    /// <summary>T(bulb) - T_dew; at the evaporator's own gauge where there is one, else at the unit's, which reads high by the line's drop.</summary>
    public static Measure Superheat(PlantState state, out bool approximate)
    {
        var bulb = state.Temperature(FactCatalogue.SuctionLineTemperatureAtBulb);
        approximate = bulb.IsKnown && !state.Evaporator.IsKnown && state.Suction.IsKnown;
        var saturation = state.Evaporator.IsKnown ? state.Evaporator : state.Suction;
        return bulb.IsKnown && saturation.IsKnown ? bulb - saturation : Said(state, FactCatalogue.Superheat);
    }

    /// <summary>T_bubble - T(liquid line at the unit), or, where only that was read, T(condenser outlet).</summary>
    /// <param name="outletStands">False where the condenser's outlet does not stand for the line: a head pressure valve mixes hot gas in between.</param>
    public static Measure Subcooling(PlantState state, bool outletStands = true)
    {
        var line = state.Temperature(FactCatalogue.LiquidLineTemperature);
        line = line.IsKnown || !outletStands ? line : state.Temperature(FactCatalogue.CondenserOutletTemperature);
        return line.IsKnown && state.Liquid.IsKnown ? state.Liquid - line : Said(state, FactCatalogue.Subcooling);
    }

    /// <summary>T_dew(discharge) - ambient.</summary>
    public static Measure Split(PlantState state) =>
        state.Condensing.IsKnown && state.Ambient.IsKnown ? state.Condensing - state.Ambient : Said(state, FactCatalogue.CondenserSplit);

    /// <summary>Air on the coil, else the box, less T_dew of the suction.</summary>
    public static Measure Td(PlantState state) => state.BoxAir - (state.Evaporator.IsKnown ? state.Evaporator : state.Suction);

    /// <summary>
    /// 1 - split/(SCT held - ambient), not below 0, at design rejection: first principles, rejection is proportional to active area
    /// times temperature difference. Only a valve floods the condenser; cycling fans do not.
    /// </summary>
    private static double? FloodedFraction(PlantState state)
    {
        var over = state.Facts.Has(FactCatalogue.HeadPressureControlSetting) ? state.Setting.Value - state.Ambient.Value : double.NaN;
        var design = state.Facts.Difference(FactCatalogue.DesignCondenserSplit);
        return design is { Kelvins: > 0 } split && over > 0 && !state.Facts.Is(FactCatalogue.HeadPressureControl, "fan-cycling")
            ? Math.Max(0, 1 - (split.Kelvins / over))
            : null;
    }

    private static double? Ratio(PlantState state) =>
        state is { DischargePressure: { } discharge, SuctionPressure: { } suction } && suction.Pascals > 0 && discharge.Pascals > 0
            ? discharge.Pascals / suction.Pascals
            : null;

    // A difference said outright rests on two instruments nobody named.
    private static Measure Said(PlantState state, Fact fact) =>
        state.Facts.Difference(fact) is { } said ? new(said.Kelvins, Instruments.SaidOutrightErrors * Instruments.TemperatureKelvins) : Measure.Unknown;

    private static CelsiusTemperature? Point(Measure measure) => measure.IsKnown ? new(measure.Value) : null;

    private static TemperatureDifference? Difference(Measure measure) => measure.IsKnown ? new(measure.Value) : null;
}
