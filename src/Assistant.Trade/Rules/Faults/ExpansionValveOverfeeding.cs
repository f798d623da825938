using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The valve lets too much through: hardly any superheat, a wet suction line, liquid on its way to the compressor.</summary>
internal static class ExpansionValveOverfeeding
{
    public static FaultRule Rule { get; } = new(
        FaultCode.ExpansionValveOverfeeding,
        "common practice",
        [CautionCode.LiquidToSuction, CautionCode.LiquidRefrigerant],
        [FactCatalogue.SuctionLineTemperatureAtBulb, FactCatalogue.SuctionPressureAtEvaporator, FactCatalogue.SuctionLineTemperatureAtCompressor],
        AtMost(SuperheatExcess, SuperheatLimits.Overfed, SuperheatLimits.OverfedScatter).Proving(),
        AtMost(CompressorSuperheat, SuperheatLimits.LittleAtCompressor, SuperheatLimits.SuctionLineScatter),
        Between(TdShare, CoilLimits.OverfedTdLow, CoilLimits.SoundTdHigh, CoilLimits.TdScatter),
        AtMost(BoxOverSetpoint, RoomLimits.StillPulling, RoomLimits.RoomScatter).Neutral(),
        AtLeast(CompressorEfficiency, CompressorLimits.SoundWorkLow, CompressorLimits.WorkScatter));
}
