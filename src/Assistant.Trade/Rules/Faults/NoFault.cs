using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Everything reads as a sound plant of this design would in this weather.</summary>
internal static class NoFault
{
    public static FaultRule Rule { get; } = new(
        FaultCode.NoFault,
        "common practice",
        [],
        [FactCatalogue.SuctionLineTemperatureAtBulb, FactCatalogue.DischargePressure, FactCatalogue.LiquidLineTemperature],
        AtMost(BoxOverSetpoint, RoomLimits.SoundOver, RoomLimits.SoundScatter));
}
