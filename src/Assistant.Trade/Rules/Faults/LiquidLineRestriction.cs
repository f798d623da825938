using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        AtLeast(SuperheatExcess, SuperheatLimits.Restricted, SuperheatLimits.HungryScatter),
        Between(Subcooling, SubcoolingLimits.FullLiquid, SubcoolingLimits.UsualHigh, SubcoolingLimits.Scatter),
        AtLeast(DrierDrop, LiquidLineLimits.BlockedDrier, LiquidLineLimits.BlockedDrierScatter).Proving(),
        AtLeast(LiquidLineDrop, LiquidLineLimits.LineLoss, LiquidLineLimits.LineScatter),
        Sees(SightGlass, Weights.GlassSpeaks, Flashing, Empty),
        AtLeast(HighSideOverAmbient, -StandingLimits.RestingNearAmbient, StandingLimits.Scatter).Neutral(),
        AtLeast(TdShare, CoilLimits.HungryTd, CoilLimits.FaultyTdScatter),
        AtMost(ValveDemand, CoilLimits.RestrictedDemand, CoilLimits.DemandScatter),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd));
}
