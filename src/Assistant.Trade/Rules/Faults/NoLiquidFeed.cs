using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        Sees(Compressor, 14, Off, ShortCycling),
        Sees(Calling, 14, Yes).Proving(),
        Sees(Solenoid, 2, No).Proving(),
        AtLeast(RestingGap, 2, 1).Proving(),
        AtLeast(RestingTd, 8, 1.5).Proving(),
        AtLeast(TdShare, 2, 0.2),
        AtMost(AirShare, 0.2, 0.06),
        AtMost(HeadExcess, 2, 0.8),
        AtMost(HeadOverSetting, 2, 0.8),
        AtMost(ColdSplitExcess, 40, 1),
        Between(HighSideOverAmbient, -4, 4, 1),
        Allows(SightGlass, 9, Clear, Flashing, Empty),
        AtLeast(BoxOverSetpoint, -1, 1).Neutral());
}
