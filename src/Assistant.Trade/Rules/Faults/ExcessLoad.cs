using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        Between(SuperheatExcess, SuperheatLimits.SoundLow, SuperheatLimits.LoadedHigh, SuperheatLimits.HungryScatter),
        // A warm room alone says only that something is wrong: a door, a load or a pressure has to speak for this.
        AtLeast(BoxOverSetpoint, RoomLimits.LoadedOver, RoomLimits.SoundScatter).Neutral(),
        Between(TdShare, CoilLimits.LoadedTdLow, CoilLimits.LoadedTdHigh, CoilLimits.FaultyTdScatter).Neutral(),
        Between(HeadExcess, HeadLimits.LoadedLow, HeadLimits.LoadedHigh, HeadLimits.Scatter),
        Sees(Door, Weights.DoorOfALoad, LeakingDoor, OpenDoor).Proving(),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd))
    {
        OtherWays = [WarmGoods],
    };

    // Goods warmer than the air around them came in warm: the door has nothing to do with it.
    private static FaultRule WarmGoods => new(
        FaultCode.ExcessLoad,
        "common practice",
        [CautionCode.FoodSafety, CautionCode.TrappedInside],
        [FactCatalogue.ProductTemperature, FactCatalogue.BoxTemperature],
        Between(SuperheatExcess, SuperheatLimits.SoundLow, SuperheatLimits.LoadedHigh, SuperheatLimits.HungryScatter),
        AtLeast(BoxOverSetpoint, RoomLimits.LoadedOver, RoomLimits.SoundScatter).Neutral(),
        Between(TdShare, CoilLimits.LoadedTdLow, CoilLimits.LoadedTdHigh, CoilLimits.FaultyTdScatter).Neutral(),
        Between(HeadExcess, HeadLimits.LoadedLow, HeadLimits.LoadedHigh, HeadLimits.Scatter),
        AtLeast(ProductOverBox, RoomLimits.CameInWarm, RoomLimits.RoomScatter).Proving(),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd));
}
