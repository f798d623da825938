using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>What cannot be on a refrigeration site, whatever was heard: such a value is asked back.</summary>
internal static class PhysicalLimits
{
    /// <summary>A perfect vacuum under the standard atmosphere reads -14.7 psig and 29.92 inHg.</summary>
    private static readonly double LowestGauge = Math.Min(UnitOfMeasure.Psig.ToCanonical(-14.7), UnitOfMeasure.InchesOfMercuryVacuum.ToCanonical(29.92));
    private static readonly double HighestGauge = UnitOfMeasure.Psig.ToCanonical(1000);
    private static readonly (double Low, double High) Air = (UnitOfMeasure.Fahrenheit.ToCanonical(-80), UnitOfMeasure.Fahrenheit.ToCanonical(150));
    private static readonly (double Low, double High) Line = (UnitOfMeasure.Fahrenheit.ToCanonical(-150), UnitOfMeasure.Fahrenheit.ToCanonical(400));

    /// <summary>No condenser is held at less: a "valve setting" of 8 degrees is another valve's. Common practice.</summary>
    private static readonly (double Low, double High) HeadSetting = (UnitOfMeasure.Fahrenheit.ToCanonical(40), UnitOfMeasure.Fahrenheit.ToCanonical(150));
    private static readonly double WidestDifference = UnitOfMeasure.FahrenheitDifference.ToCanonical(150);
    private static readonly double AtmosphereInPascals = UnitOfMeasure.Micron.ToCanonical(760_000);

    private static readonly HashSet<Fact> AirTemperatures =
    [
        FactCatalogue.BoxTemperature, FactCatalogue.BoxTemperatureCheck, FactCatalogue.Setpoint, FactCatalogue.EvaporatorAirIn,
        FactCatalogue.EvaporatorAirOut, FactCatalogue.ProductTemperature, FactCatalogue.AmbientTemperature, FactCatalogue.ColdestDesignAmbient,
        FactCatalogue.CylinderTemperature, FactCatalogue.TestGasTemperature,
    ];

    public static bool Allow(Reading reading)
    {
        // The last digit of a conversion is no reason to ask back.
        const double Slack = 1e-9;
        var (low, high) = Of(reading.Fact, reading.Unit);
        var isOpenBelow = reading.Unit.Dimension is Dimension.Vacuum or Dimension.Volume;
        return (isOpenBelow ? reading.Canonical > low.Canonical : reading.Canonical >= low.Canonical - Slack) && (high is null || reading.Canonical <= high.Value.Canonical + Slack);
    }

    /// <summary>Between what the fact can lie when it is read in that unit; no upper end where there is none.</summary>
    public static (Amount Low, Amount? High) Of(Fact fact, UnitOfMeasure unit)
    {
        (double Low, double High)? within = unit.Dimension switch
        {
            Dimension.Pressure => (LowestGauge, HighestGauge),
            Dimension.Temperature when fact == FactCatalogue.HeadPressureControlSetting => HeadSetting,
            Dimension.Temperature when AirTemperatures.Contains(fact) => Air,
            Dimension.Temperature => Line,
            Dimension.TemperatureDifference => (0, WidestDifference),
            Dimension.Vacuum => (0, AtmosphereInPascals),
            Dimension.Length => (-500, 6000),
            _ => null,
        };
        return within is var (low, high) ? (new(low, unit.Dimension), new Amount(high, unit.Dimension)) : (new(0, unit.Dimension), null);
    }
}
