using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The valve lets too little through: full liquid at the valve with a clear glass, yet a hungry coil.</summary>
internal static class ExpansionValveStarving
{
    public static FaultRule Rule { get; } = new(
        FaultCode.ExpansionValveStarving,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.TrappedLiquid, CautionCode.LiquidRefrigerant],
        [FactCatalogue.SightGlass, FactCatalogue.SuctionLineTemperatureAtBulb, FactCatalogue.DrierInletTemperature],
        AtLeast(SuperheatExcess, SuperheatLimits.Starved, SuperheatLimits.HungryScatter).Proving(),
        Sees(SightGlass, Weights.GlassDecides, Clear).Proving(),
        AtLeast(HighSideOverAmbient, -StandingLimits.RestingNearAmbient, StandingLimits.Scatter).Neutral(),
        AtLeast(TdShare, CoilLimits.HungryTd, CoilLimits.FaultyTdScatter),
        AtMost(ValveDemand, CoilLimits.EnoughPressure, CoilLimits.DemandScatter),
        Between(Subcooling, SubcoolingLimits.LiquidAtValve, SubcoolingLimits.UsualHigh, SubcoolingLimits.Scatter),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd));
}
