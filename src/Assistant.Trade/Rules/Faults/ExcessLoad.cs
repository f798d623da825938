using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>More heat comes in than the plant can carry: the box well over its setpoint, both pressures high, the glass clear, a door or a delivery to account for it.</summary>
internal static class ExcessLoad
{
    public static FaultRule Rule { get; } = new(
        FaultCode.ExcessLoad,
        "common practice",
        [CautionCode.TrappedInside, CautionCode.FoodSafety, CautionCode.ColdStress],
        [FactCatalogue.DoorCondition, FactCatalogue.BoxTemperature, FactCatalogue.ProductTemperature],
        Between(SuperheatExcess, -2.2, 5, 0.8),
        // A warm room alone says only that something is wrong: a door, a load or a pressure has to speak for this.
        AtLeast(BoxOverSetpoint, 2.5, 0.8).Neutral(),
        Between(TdShare, 0.8, 1.5, 0.12).Neutral(),
        Between(HeadExcess, -3, 4, 0.8),
        Sees(Door, 6, LeakingDoor, OpenDoor).Proving(),
        Sees(CoilIce, 16, NoIce, LightIce, DistributorEnd));
}
