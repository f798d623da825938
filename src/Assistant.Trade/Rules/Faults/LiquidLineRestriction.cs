using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The liquid line is throttled: full subcooled liquid before the drier, a drop across it, flashing after it, and a hungry coil.</summary>
internal static class LiquidLineRestriction
{
    public static FaultRule Rule { get; } = new(
        FaultCode.LiquidLineRestriction,
        "common practice (3 degF across the drier)",
        [CautionCode.TrappedLiquid, CautionCode.NoVenting, CautionCode.LiquidRefrigerant],
        [FactCatalogue.DrierInletTemperature, FactCatalogue.DrierOutletTemperature, FactCatalogue.LiquidLineTemperature],
        AtLeast(SuperheatExcess, 2, 0.8),
        Between(Subcooling, 1.8, 6, 0.4),
        AtLeast(DrierDrop, 1.7, 0.4).Proving(),
        AtLeast(LiquidLineDrop, 2.5, 0.8),
        Sees(SightGlass, 9, Flashing, Empty),
        AtLeast(TdShare, 1.1, 0.12),
        AtMost(ValveDemand, 1.05, 0.08),
        Sees(CoilIce, 16, NoIce, LightIce, DistributorEnd));
}
