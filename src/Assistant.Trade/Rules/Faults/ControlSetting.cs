using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The box obeys a setpoint or a differential that is wrong for what is stored.</summary>
internal static class ControlSetting
{
    public static FaultRule Rule { get; } = new(
        FaultCode.ControlSetting,
        "FDA Food Code 3-501.16 for coolers; common practice for freezers",
        [CautionCode.FoodSafety],
        [FactCatalogue.Setpoint, FactCatalogue.Differential, FactCatalogue.CallingForCooling],
        Sees(Calling, 2, No),
        Allows(Solenoid, 12, Yes, No),
        Allows(Compressor, 14, Off, Running),
        AtLeast(SettingExcess, 1.4, 0.1).Proving(),
        AtLeast(RestingTd, 5, 1.5),
        AtMost(BoxOverCall, 1, 0.7).Proving(),
        AtLeast(HighSideOverAmbient, -5, 1).Neutral(),
        Allows(SightGlass, 9, Clear, Flashing, Empty));
}
