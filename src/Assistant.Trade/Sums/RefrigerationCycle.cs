using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A corner of the cycle.</summary>
public enum CycleCorner
{
    CompressorInlet,
    CompressorOutlet,
    LiquidLine,
    EvaporatorInlet,
}

/// <summary>A corner of a cycle in a pressure-enthalpy picture; IIR reference state.</summary>
/// <param name="IsAssumed">True where no reading gives it, only the usual values.</param>
public sealed record CyclePoint(CycleCorner Corner, AbsolutePressure Pressure, SpecificEnergy Enthalpy, bool IsAssumed);

/// <summary>The corners of a single-stage vapour cycle in the way of the refrigerant, from the compressor's inlet on.</summary>
public sealed record RefrigerationCycle(Refrigerant Refrigerant, ImmutableArray<CyclePoint> Points)
{
    private static readonly TemperatureDifference UsualSubcooling = TemperatureDifference.FromFahrenheitDegrees(5);

    /// <summary>
    /// The cycle as it was read. Null where the refrigerant or one of the two pressures is unknown, or a state lies outside the tables.
    /// Without a line temperature its corner is reckoned: 20 degF of superheat, saturated liquid, the expected discharge temperature.
    /// </summary>
    public static RefrigerationCycle? Measured(FactSet facts) =>
        RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is { } refrigerant
        && (facts.Pressure(FactCatalogue.SuctionPressure) ?? facts.Pressure(FactCatalogue.SuctionPressureAtEvaporator)) is { } suction
        && facts.Pressure(FactCatalogue.DischargePressure) is { } discharge
            ? Of(
                refrigerant,
                suction,
                discharge,
                facts.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) ?? facts.Temperature(FactCatalogue.SuctionLineTemperatureAtBulb),
                facts.Temperature(FactCatalogue.DischargeLineTemperature),
                facts.Temperature(FactCatalogue.LiquidLineTemperature))
            : null;

    /// <summary>
    /// The cycle the unit is built for, at today's ambient and its setpoint: SST = setpoint - design TD, SCT = ambient + design split or the
    /// head that is held, whichever is higher. Null without refrigerant, setpoint or ambient. Usual values where the record has none.
    /// </summary>
    public static RefrigerationCycle? Design(FactSet facts)
    {
        if (RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant
            || facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint
            || facts.Temperature(FactCatalogue.AmbientTemperature) is not { } ambient)
        {
            return null;
        }

        var table = refrigerant.Saturation;
        var evaporating = setpoint - (facts.Difference(FactCatalogue.DesignEvaporatorTd) ?? Middle(EvaporatorTd.Usual));
        var condensing = ambient + (facts.Difference(FactCatalogue.DesignCondenserSplit) ?? Middle(CondenserSplit.Usual));
        var held = HeldHead.Of(facts, refrigerant);
        condensing = held is { } least && least > condensing ? least : condensing;
        if (!table.TryDewPressure(evaporating, out var suction) || !table.TryDewPressure(condensing, out var discharge)
            || !table.TryBubbleTemperature(discharge, out var bubble))
        {
            return null;
        }

        return Of(refrigerant, suction, discharge, null, null, bubble - UsualSubcooling) is { } cycle
            ? cycle with { Points = [.. cycle.Points.Select(p => p with { IsAssumed = true })] }
            : null;
    }

    private static RefrigerationCycle? Of(
        Refrigerant refrigerant, AbsolutePressure suction, AbsolutePressure discharge, CelsiusTemperature? inlet, CelsiusTemperature? outlet, CelsiusTemperature? liquid)
    {
        var (table, vapour) = (refrigerant.Saturation, refrigerant.Superheated);
        if (!table.TryDewTemperature(suction, out var dew) || !table.TryBubbleTemperature(discharge, out var bubble))
        {
            return null;
        }

        var before = inlet ?? dew + SuperheatTarget.LeastAtCompressor;
        var after = outlet ?? DischargeTemperature.Expected(refrigerant, suction, before, discharge);
        var drained = liquid is { } read && read < bubble ? read : bubble;
        if (after is not { } hot || !vapour.Covers(suction, before) || !vapour.Covers(discharge, hot) || !table.Temperatures.Contains(drained))
        {
            return null;
        }

        // Liquid is next to incompressible: its enthalpy is that of saturated liquid of its temperature.
        var arriving = table.LiquidEnthalpy(drained);
        return new(refrigerant,
        [
            new(CycleCorner.CompressorInlet, suction, vapour.Enthalpy(suction, before), inlet is null),
            new(CycleCorner.CompressorOutlet, discharge, vapour.Enthalpy(discharge, hot), outlet is null),
            new(CycleCorner.LiquidLine, discharge, arriving, liquid is null),
            new(CycleCorner.EvaporatorInlet, suction, arriving, liquid is null),
        ]);
    }

    private static TemperatureDifference Middle((TemperatureDifference Low, TemperatureDifference High) range) =>
        new((range.Low.Kelvins + range.High.Kelvins) / 2);
}
