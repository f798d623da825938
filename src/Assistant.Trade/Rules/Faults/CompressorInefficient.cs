using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        Between(SuperheatExcess, SuperheatLimits.SlackLow, SuperheatLimits.SlackHigh, SuperheatLimits.SlackScatter),
        AtMost(TdShare, CoilLimits.SlackTd, CoilLimits.TdScatter).Proving(),
        AtMost(HeadExcess, HeadLimits.SlackHigh, HeadLimits.Scatter),
        AtMost(SplitShare, HeadLimits.SlackSplit, HeadLimits.SplitScatter),
        AtMost(CurrentShare, CompressorLimits.SlackCurrent, CompressorLimits.SlackCurrentScatter),
        AtMost(CompressorEfficiency, CompressorLimits.SlackWork, CompressorLimits.WorkScatter),
        AtMost(BoxOverSetpoint, RoomLimits.SlackOver, RoomLimits.RoomScatter));
}
