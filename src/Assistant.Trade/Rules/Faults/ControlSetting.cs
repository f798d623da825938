using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        Sees(Calling, Weights.CallUnderAWrongSetting, No),
        Allows(Solenoid, Weights.Solenoid, Yes, No),
        Allows(Compressor, Weights.CompressorSeen, Off, Running),
        AtLeast(SettingExcess, RoomLimits.WrongSetting, RoomLimits.WrongSettingScatter).Proving(),
        AtLeast(RestingTd, StandingLimits.PumpedDown, StandingLimits.LowSideScatter),
        AtMost(BoxOverCall, RoomLimits.Obeyed, RoomLimits.ObeyedScatter).Proving().Neutral(),
        AtLeast(HighSideOverAmbient, StandingLimits.AnyOverAmbient, StandingLimits.Scatter).Neutral(),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty));
}
