using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Two thermometers in the same air disagree: no verdict until that is settled.</summary>
internal static class SensorError
{
    public static FaultRule Rule { get; } = new(
        FaultCode.SensorError,
        "common practice",
        [CautionCode.FoodSafety],
        [FactCatalogue.BoxTemperatureCheck, FactCatalogue.EvaporatorAirIn],
        AtLeast(ThermometerGap, 2.2, 0.4).Proving(),
        Allows(Calling, 14, Yes, No),
        Allows(Solenoid, 12, Yes, No),
        Allows(Compressor, 14, Running, Off, ShortCycling),
        Allows(SightGlass, 9, Clear, Flashing, Empty),
        AtLeast(HighSideOverAmbient, -5, 1).Neutral(),
        AtLeast(BoxOverSetpoint, -20, 1).Neutral());
}
