using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Two thermometers in the same air disagree: no verdict until that is settled.</summary>
internal static class SensorError
{
    private static readonly Expectation Apart = AtLeast(ThermometerGap, RoomLimits.ThermometersApart, RoomLimits.ThermometerScatter).Proving();

    /// <summary>True where they are further apart than two sound thermometers can be.</summary>
    public static bool IsShown(SymptomTable table) => Apart.HoldsBeyondError(table[ThermometerGap]);

    public static FaultRule Rule { get; } = new(
        FaultCode.SensorError,
        "common practice",
        [CautionCode.FoodSafety],
        [FactCatalogue.BoxTemperatureCheck, FactCatalogue.EvaporatorAirIn],
        Apart,
        Allows(Calling, Weights.Call, Yes, No),
        Allows(Solenoid, Weights.Solenoid, Yes, No),
        Allows(Compressor, Weights.CompressorSeen, Running, Off, ShortCycling),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty),
        AtLeast(HighSideOverAmbient, StandingLimits.AnyOverAmbient, StandingLimits.Scatter).Neutral(),
        AtLeast(BoxOverSetpoint, RoomLimits.AnyRoom, RoomLimits.RoomScatter).Neutral());
}
