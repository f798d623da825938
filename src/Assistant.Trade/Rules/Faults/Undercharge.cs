using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Short of charge: no liquid seal, so the glass flashes, the subcooling is gone and the coil is hungry. The receiver hides a shortage until the liquid runs out.</summary>
internal static class Undercharge
{
    public static FaultRule Rule { get; } = new(
        FaultCode.Undercharge,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.NoVenting, CautionCode.TrappedLiquid, CautionCode.LiquidRefrigerant],
        [FactCatalogue.SightGlass, FactCatalogue.LiquidLineTemperature, FactCatalogue.SuctionLineTemperatureAtBulb],
        AtLeast(SuperheatExcess, 1.2, 0.8),
        AtMost(Subcooling, 1.5, 0.4),
        Sees(SightGlass, 14, Flashing, Empty).Proving(),
        Between(HeadExcess, -16, 2, 0.8),
        AtLeast(HeadOverSetting, -16, 1),
        AtLeast(ColdSplitExcess, 3.5, 1),
        AtLeast(TdShare, 1.0, 0.12),
        AtMost(ValveDemand, 1.2, 0.08),
        Sees(CoilIce, 16, NoIce, LightIce, DistributorEnd));
}
