using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        Sees(Compressor, 40, Off).Proving(),
        Sees(Calling, 14, Yes).Proving(),
        Allows(Solenoid, 12, Yes),
        AtMost(RestingGap, 3, 1).Proving(),
        AtMost(RestingTd, 5, 1.5),
        AtLeast(HighSideOverAmbient, -60, 1).Neutral(),
        Allows(SightGlass, 9, Clear, Flashing, Empty),
        AtLeast(BoxOverSetpoint, -1, 1).Neutral());
}
