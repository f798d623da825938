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
        Sees(Solenoid, 12, Yes, No),
        AtLeast(RestingGap, 5, 1).Proving(),
        AtLeast(RestingTd, 8, 1.5).Proving(),
        AtLeast(TdShare, 2, 0.2),
        AtMost(HighSideOverAmbient, 4, 1),
        Sees(SightGlass, 9, Clear, Flashing, Empty),
        Sees(CondenserFans, 8, AllFans, SomeFans, NoFans, CyclingFans),
        AtLeast(BoxOverSetpoint, -1, 1));
}
