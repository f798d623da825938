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
        AtLeast(ThermometerGap, 1.7, 0.4).Proving(),
        Sees(Calling, 14, Yes, No),
        Sees(Solenoid, 12, Yes, No),
        Sees(Compressor, 14, Running, Off, ShortCycling),
        Sees(SightGlass, 9, Clear, Flashing, Empty),
        Sees(CondenserFans, 8, AllFans, SomeFans, NoFans, CyclingFans),
        AtLeast(HighSideOverAmbient, -5, 1),
        AtLeast(BoxOverSetpoint, -20, 1));
}
