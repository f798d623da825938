using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        AtLeast(SuperheatExcess, 2.5, 0.8).Proving(),
        Sees(SightGlass, 14, Clear).Proving(),
        AtLeast(TdShare, 1.1, 0.12),
        AtMost(ValveDemand, 1.0, 0.08),
        Between(Subcooling, 1.3, 6, 0.4),
        Sees(CoilIce, 16, NoIce, LightIce, DistributorEnd));
}
