using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Everything reads as a sound plant of this design would in this weather.</summary>
internal static class NoFault
{
    public static FaultRule Rule { get; } = new(
        FaultCode.NoFault,
        "common practice",
        [],
        [FactCatalogue.SuctionLineTemperatureAtBulb, FactCatalogue.DischargePressure, FactCatalogue.LiquidLineTemperature],
        AtMost(BoxOverSetpoint, RoomLimits.SoundOver, RoomLimits.SoundScatter),
        Allows(PullingDown, Weights.Door, Yes, No));

    /// <summary>Two thermometers at the setpoint or under it, and nothing calls: the control is satisfied and the plant rightly rests.</summary>
    public static FaultRule AtRest { get; } = new(
        FaultCode.NoFault,
        "common practice",
        [],
        [FactCatalogue.BoxTemperatureCheck, FactCatalogue.CallingForCooling],
        AtMost(BoxOverSetpoint, RoomLimits.Satisfied, RoomLimits.SatisfiedScatter),
        Sees(Calling, Weights.Call, No).Proving(),
        Sees(Solenoid, Weights.Solenoid, No),
        Sees(Compressor, Weights.CompressorSeen, Off),
        Allows(SightGlass, Weights.GlassSpeaks, Clear, Flashing, Empty),
        AtLeast(HighSideOverAmbient, StandingLimits.AnyOverAmbient, StandingLimits.Scatter).Neutral());
}
