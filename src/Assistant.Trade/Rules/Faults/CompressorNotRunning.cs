using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>A call, liquid let through, both sides equal, and the compressor still: supply, contactor, safeties, overload, in that order.</summary>
internal static class CompressorNotRunning
{
    public static FaultRule Rule { get; } = new(
        FaultCode.CompressorNotRunning,
        "common practice",
        [CautionCode.LockOut, CautionCode.Electrical],
        [FactCatalogue.Compressor, FactCatalogue.CallingForCooling, FactCatalogue.SolenoidEnergised],
        Sees(Compressor, Weights.CompressorStill, Off).Proving(),
        Sees(Calling, Weights.Call, Yes).Proving(),
        Allows(Solenoid, Weights.Solenoid, Yes),
        Between(RestingGap, -StandingLimits.Equal, StandingLimits.Equal, StandingLimits.Scatter).Proving(),
        AtMost(RestingTd, StandingLimits.PumpedDown, StandingLimits.LowSideScatter),
        AtLeast(HighSideOverAmbient, StandingLimits.EqualisedUnderAmbient, StandingLimits.Scatter).Neutral(),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty),
        AtLeast(BoxOverSetpoint, RoomLimits.NotUnder, RoomLimits.RoomScatter).Neutral());
}
