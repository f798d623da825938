using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The head is not held up in the cold: the condenser works whole, so the split is near its design while the head is far under the setting, with a clear glass. Under the setting with a flashing glass is first a charge question.</summary>
internal static class HeadPressureControlLow
{
    public static FaultRule Rule { get; } = new(
        FaultCode.HeadPressureControlLow,
        "common practice",
        [CautionCode.LockOut, CautionCode.Ladder, CautionCode.RoofWeather, CautionCode.MovingFan],
        [FactCatalogue.SightGlass, FactCatalogue.AmbientTemperature, FactCatalogue.HeadPressureControlSetting],
        AtLeast(SuperheatExcess, SuperheatLimits.LowHead, SuperheatLimits.HungryScatter).Neutral(),
        AtMost(HeadExcess, HeadLimits.Under, HeadLimits.Scatter),
        AtLeast(ControlDue, HeadLimits.ControlHasWork, HeadLimits.ColdScatter),
        AtMost(HeadOverSetting, HeadLimits.NotHeld, HeadLimits.Scatter).Proving(),
        Between(ColdSplitExcess, HeadLimits.WholeSplitLow, HeadLimits.WholeSplitHigh, HeadLimits.WholeSplitScatter).Proving(),
        Sees(SightGlass, Weights.GlassDecides, Clear).Proving(),
        Between(Subcooling, SubcoolingLimits.LiquidInTheCold, SubcoolingLimits.UsualHigh, SubcoolingLimits.UnsteadyScatter),
        AtLeast(TdShare, CoilLimits.LowHeadTd, CoilLimits.FaultyTdScatter).Neutral(),
        AtLeast(ValveDemand, CoilLimits.LowHeadDemand, CoilLimits.DemandScatter),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd),
        Allows(Compressor, Weights.HeadWhileCycling, Running),
        Sees(HeadControl, Weights.HeadControl, Valve, FanCycling))
    {
        OtherWays = [Without],
    };

    // With no control fitted nothing holds the head at all: on a cold day the valve is not fed and the room warms.
    private static FaultRule Without => new(
        FaultCode.HeadPressureControlLow,
        "common practice",
        [CautionCode.LockOut, CautionCode.Ladder, CautionCode.RoofWeather],
        [FactCatalogue.AmbientTemperature, FactCatalogue.SightGlass, FactCatalogue.BoxTemperature],
        AtLeast(SuperheatExcess, SuperheatLimits.LowHead, SuperheatLimits.HungryScatter),
        AtLeast(ControlDue, HeadLimits.ControlHasWork, HeadLimits.ColdScatter).Proving(),
        Sees(SightGlass, Weights.GlassDecides, Clear).Proving(),
        AtLeast(TdShare, CoilLimits.HungryTd, CoilLimits.FaultyTdScatter),
        AtLeast(ValveDemand, CoilLimits.Underfed, CoilLimits.DemandScatter).Proving(),
        AtLeast(BoxOverSetpoint, RoomLimits.Warming, RoomLimits.RoomScatter),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd),
        Sees(HeadControl, Weights.HeadControl, NoControl).Proving());
}
