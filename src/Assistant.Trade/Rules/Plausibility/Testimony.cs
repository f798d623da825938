using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>Each witness's reading as a temperature in degC.</summary>
internal static class Testimony
{
    /// <summary>The fact each witness speaks for, in the order of <see cref="Witness"/>.</summary>
    public static ImmutableArray<Fact> Facts { get; } =
    [
        BoxTemperature, BoxTemperatureCheck, EvaporatorAirIn, EvaporatorAirOut, ProductTemperature, FactCatalogue.Setpoint,
        SuctionLineTemperatureAtBulb, SuctionLineTemperatureAtCompressor, SuctionPressure, SuctionPressureAtEvaporator, DischargePressure,
        LiquidPressure, LiquidLineTemperature, DrierInletTemperature, DrierOutletTemperature, LiquidLineTemperatureAtCoil,
        CondenserOutletTemperature, DischargeLineTemperature, AmbientTemperature, HighSideStandingPressure, HeadPressureControlSetting,
    ];

    public static double[] Of(FactSet facts, Refrigerant? refrigerant)
    {
        var said = new double[Facts.Length];
        for (var i = 0; i < said.Length; i++)
        {
            said[i] = facts.Find(Facts[i]) is Reading reading ? Of((Witness)i, reading, facts.Barometer, refrigerant) : double.NaN;
        }

        return said;
    }

    /// <summary>The reading as a temperature: itself, or the saturation temperature of its pressure; NaN where that cannot be told.</summary>
    public static double Of(Witness witness, Reading reading, AbsolutePressure barometer, Refrigerant? refrigerant)
    {
        if (reading.Unit.Dimension == Dimension.Temperature)
        {
            return reading.Canonical;
        }

        // R744 may run above its critical point, where a pressure has no saturation temperature.
        if (refrigerant is null or { Designation: "R744" } || reading.Unit.Dimension != Dimension.Pressure)
        {
            return double.NaN;
        }

        var standard = reading.Unit.IsAbsolutePressure ? AbsolutePressure.StandardAtmosphere : barometer;
        var pressure = new GaugePressure(reading.Canonical * 1000).ToAbsolute(standard);
        return witness is Witness.HighSideAtRest or Witness.LiquidBubble ? Bubble(refrigerant.Saturation, pressure) : Dew(refrigerant.Saturation, pressure);
    }

    // Outside the table the end of it bears the same witness: far too cold or far too warm.
    private static double Dew(SaturationTable table, AbsolutePressure pressure) =>
        table.TryDewTemperature(pressure, out var dew) ? dew.Degrees : pressure < table.DewPressures.Lowest ? table.Temperatures.Lowest.Degrees : table.Temperatures.Highest.Degrees;

    private static double Bubble(SaturationTable table, AbsolutePressure pressure) =>
        table.TryBubbleTemperature(pressure, out var bubble) ? bubble.Degrees
        : pressure < table.BubblePressures.Lowest ? table.Temperatures.Lowest.Degrees : table.Temperatures.Highest.Degrees;
}
