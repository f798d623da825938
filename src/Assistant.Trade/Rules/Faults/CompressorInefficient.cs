using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The compressor pumps less than it should: the two pressures move towards each other, the current is low, the box warm.</summary>
internal static class CompressorInefficient
{
    public static FaultRule Rule { get; } = new(
        FaultCode.CompressorInefficient,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.Electrical, CautionCode.LockOut, CautionCode.HotSurface],
        [FactCatalogue.DischargePressure, FactCatalogue.SuctionPressure, FactCatalogue.CompressorCurrent, FactCatalogue.AmbientTemperature],
        Between(SuperheatExcess, -2.4, 1.5, 0.6),
        AtMost(TdShare, 0.88, 0.1).Proving(),
        AtMost(HeadExcess, 1, 0.8),
        AtMost(SplitShare, 0.85, 0.08),
        AtMost(CurrentShare, 0.8, 0.08),
        AtMost(CompressorEfficiency, 0.6, 0.04),
        AtMost(BoxOverSetpoint, 8, 1));
}
