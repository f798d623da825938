using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        AtMost(SuperheatExcess, -2.6, 0.6).Proving(),
        AtMost(CompressorSuperheat, 7, 1.5),
        Between(TdShare, 0.8, 1.3, 0.1),
        AtLeast(CompressorEfficiency, 0.58, 0.04));
}
