using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Nothing calls: a resting or pumped-down plant, control or sensor failed, or in defrost. Not a charge fault.</summary>
internal static class NoCallForCooling
{
    /// <summary>Squared errors: a control that calls rules this out, whatever else is read.</summary>
    private const double ACallIsACall = 41;

    public static FaultRule Rule { get; } = new(
        FaultCode.NoCallForCooling,
        "common practice",
        [CautionCode.Electrical],
        [FactCatalogue.CallingForCooling, FactCatalogue.DefrostActive, FactCatalogue.Setpoint],
        Sees(Calling, ACallIsACall, No).Proving(),
        Sees(Solenoid, 12, No),
        Sees(Compressor, 14, Off),
        Allows(Defrost, 12, Yes, No),
        AtLeast(BoxOverCall, 0, 20).Proving(),
        AtMost(SettingExcess, 1.2, 0.4).Proving(),
        AtLeast(BoxOverSetpoint, -1, 1).Neutral(),
        AtLeast(RestingTd, 5, 1.5),
        AtMost(HighSideOverAmbient, 10, 1),
        Allows(SightGlass, 9, Clear, Flashing, Empty),
        Allows(EvaporatorFans, 10, AllFans, SomeFans, NoFans));
}
