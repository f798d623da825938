using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Nothing calls: a resting or pumped-down plant, control or sensor failed, or in defrost. Not a charge fault.</summary>
internal static class NoCallForCooling
{
    public static FaultRule Rule { get; } = new(
        FaultCode.NoCallForCooling,
        "common practice",
        [CautionCode.Electrical],
        [FactCatalogue.CallingForCooling, FactCatalogue.DefrostActive, FactCatalogue.Setpoint],
        Sees(Calling, Weights.ACallIsACall, No).Proving(),
        Sees(Solenoid, Weights.Solenoid, No),
        Sees(Compressor, Weights.CompressorSeen, Off),
        Allows(Defrost, Weights.Defrost, Yes, No),
        AtLeast(BoxOverCall, RoomLimits.ClearlyOverCall, RoomLimits.OverCallScatter).Proving().Neutral(),
        AtMost(SettingExcess, RoomLimits.UsableSetting, RoomLimits.UsableSettingScatter).Proving().Neutral(),
        AtLeast(BoxOverSetpoint, RoomLimits.NotUnder, RoomLimits.RoomScatter).Neutral(),
        AtLeast(RestingTd, StandingLimits.PumpedDown, StandingLimits.LowSideScatter),
        AtMost(HighSideOverAmbient, StandingLimits.NotRejecting, StandingLimits.Scatter),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty),
        Allows(EvaporatorFans, Weights.CoilFans, AllFans, SomeFans, NoFans));
}
