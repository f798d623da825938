using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>A call, but nothing is let through: the low side is pumped down, the high side rests.</summary>
internal static class NoLiquidFeed
{
    public static FaultRule Rule { get; } = new(
        FaultCode.NoLiquidFeed,
        "common practice",
        [CautionCode.Electrical, CautionCode.LockOut, CautionCode.TrappedLiquid],
        [FactCatalogue.SolenoidEnergised, FactCatalogue.CallingForCooling, FactCatalogue.SuctionPressure],
        Sees(Compressor, Weights.CompressorSeen, Off, ShortCycling),
        Sees(Calling, Weights.Call, Yes).Proving(),
        Sees(Solenoid, Weights.SolenoidStuck, No).Proving(),
        AtLeast(RestingGap, StandingLimits.Apart, StandingLimits.Scatter).Proving(),
        AtLeast(RestingTd, StandingLimits.NothingLetIn, StandingLimits.LowSideScatter).Proving(),
        AtLeast(TdShare, CoilLimits.EmptyTd, CoilLimits.EmptyTdScatter),
        AtMost(AirShare, CoilLimits.EmptyAirFall, CoilLimits.AirScatter),
        AtMost(HeadExcess, HeadLimits.NotOver, HeadLimits.Scatter),
        AtMost(HeadOverSetting, HeadLimits.NotOver, HeadLimits.Scatter),
        AtMost(ColdSplitExcess, HeadLimits.RestingSplit, HeadLimits.ColdScatter),
        Between(HighSideOverAmbient, -StandingLimits.RestingNearAmbient, StandingLimits.RestingNearAmbient, StandingLimits.Scatter),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty),
        AtLeast(BoxOverSetpoint, RoomLimits.NotUnder, RoomLimits.RoomScatter).Neutral());
}
