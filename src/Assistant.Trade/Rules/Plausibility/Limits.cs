using System.Collections.Frozen;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>What a single fact can be, whatever the others say: wide, physical or common-practice limits in canonical units.</summary>
internal static class Limits
{
    private static readonly FrozenDictionary<Fact, (double Low, double High)> ByFact = new Dictionary<Fact, (double, double)>
    {
        [Altitude] = (-450, 5500),
        [DesignCondenserSplit] = (3, 25),
        [DesignEvaporatorTd] = (1.5, 17),
        [Differential] = (0.1, 12),
        [BoxTemperature] = (-50, 45),
        [BoxTemperatureCheck] = (-50, 45),
        [EvaporatorAirIn] = (-50, 45),
        [EvaporatorAirOut] = (-55, 45),
        [ProductTemperature] = (-50, 45),
        [Setpoint] = (-45, 18),
        [AmbientTemperature] = (-50, 58),
        [ColdestDesignAmbient] = (-60, 30),
        [SuctionLineTemperatureAtBulb] = (-60, 45),
        [SuctionLineTemperatureAtCompressor] = (-55, 60),
        [LiquidLineTemperature] = (-50, 85),
        [LiquidLineTemperatureAtCoil] = (-50, 85),
        [DrierInletTemperature] = (-50, 85),
        [DrierOutletTemperature] = (-50, 85),
        [CondenserOutletTemperature] = (-50, 85),
        [DischargeLineTemperature] = (-30, 170),
        [SaturatedSuctionTemperature] = (-70, 30),
        [SaturatedCondensingTemperature] = (-50, 85),

        // A superheat below zero beyond two thermometers' error is no superheat: the readings are questioned.
        [Superheat] = (-2.5, 70),
        [Subcooling] = (-2.5, 50),
        [CondenserSplit] = (-2.5, 70),
        [CompressorCurrent] = (0, 2000),
        [RatedCurrent] = (0.1, 2000),
        [SupplyVoltage] = (0, 1000),
        [FullCharge] = (0.01, 20000),
        [CylinderWeight] = (0, 2000),
        [CylinderTare] = (0, 500),
        [CylinderTemperature] = (-60, 70),
        [VacuumLevel] = (0, 110_000),
    }.ToFrozenDictionary();

    /// <summary>Lowest pressure a gauge can stand at, in kPa gauge at sea level: a perfect vacuum.</summary>
    private const double PerfectVacuum = -101.4;

    private const double HighestPressure = 16_000;

    /// <summary>False for a value nobody can have read.</summary>
    public static bool Allow(FactValue value)
    {
        if (value is not Reading reading)
        {
            return true;
        }

        var canonical = reading.Canonical;
        if (!double.IsFinite(canonical))
        {
            return false;
        }

        if (reading.Unit.Dimension == Dimension.Pressure)
        {
            return canonical is >= PerfectVacuum and <= HighestPressure;
        }

        return !ByFact.TryGetValue(reading.Fact, out var limits) || (canonical >= limits.Low && canonical <= limits.High);
    }
}
