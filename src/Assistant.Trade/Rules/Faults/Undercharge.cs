using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        AtLeast(SuperheatExcess, SuperheatLimits.ShortOfCharge, SuperheatLimits.HungryScatter),
        AtMost(Subcooling, SubcoolingLimits.NoSeal, SubcoolingLimits.Scatter),
        Sees(SightGlass, Weights.GlassDecides, Flashing, Empty).Proving(),
        Between(HeadExcess, HeadLimits.ShortOfChargeLow, HeadLimits.NotOver, HeadLimits.Scatter),
        AtLeast(HeadOverSetting, HeadLimits.ShortOfChargeLow, HeadLimits.ColdScatter),
        AtLeast(ColdSplitExcess, HeadLimits.ShortFloodedSplit, HeadLimits.ColdScatter),
        AtLeast(HighSideOverAmbient, -StandingLimits.RestingNearAmbient, StandingLimits.Scatter).Neutral(),
        AtLeast(TdShare, CoilLimits.ShortOfChargeTd, CoilLimits.FaultyTdScatter),
        AtMost(ValveDemand, CoilLimits.ShortOfChargeDemand, CoilLimits.DemandScatter),
        Sees(CoilIce, Weights.Ice, NoIce, LightIce, DistributorEnd))
    {
        OtherWays = [AtRest],
    };

    // At rest the pressure is that of the coldest liquid; under it there is no liquid left, whatever the glass and the compressor do.
    private static FaultRule AtRest => new(
        FaultCode.Undercharge,
        "first principles: saturation at the coldest liquid",
        [CautionCode.NoVenting, CautionCode.LiquidRefrigerant],
        [FactCatalogue.StandingPressure, FactCatalogue.HighSideStandingPressure, FactCatalogue.SightGlass],
        AtMost(EqualisedOverColdest, StandingLimits.NoLiquidLeft, StandingLimits.Scatter).Proving(),
        AtMost(StandingExcess, StandingLimits.NoLiquidLeft, StandingLimits.Scatter),
        Sees(SightGlass, Weights.GlassSpeaks, Flashing, Empty),
        Allows(Compressor, Weights.CompressorSeen, Off, ShortCycling),
        Between(RestingGap, -StandingLimits.Equal, StandingLimits.Equal, StandingLimits.Scatter).Neutral(),
        AtLeast(HighSideOverAmbient, StandingLimits.EqualisedUnderAmbient, StandingLimits.Scatter).Neutral(),
        AtLeast(BoxOverSetpoint, RoomLimits.NotUnder, RoomLimits.RoomScatter).Neutral());
}
