using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The head is held up when it should not be: the valve bypasses hot gas into the liquid, so the head is high and the subcooling gone in mild weather.</summary>
internal static class HeadPressureControlHigh
{
    public static FaultRule Rule { get; } = new(
        FaultCode.HeadPressureControlHigh,
        "common practice",
        [CautionCode.HotSurface, CautionCode.LockOut],
        [FactCatalogue.LiquidLineTemperature, FactCatalogue.HeadPressureControlSetting, FactCatalogue.AmbientTemperature],
        AtLeast(HeadExcess, 2.5, 0.8),
        AtLeast(HeadOverSetting, 0, 0.8),
        AtMost(Subcooling, 1.7, 0.4).Proving(),
        Sees(SightGlass, 9, Clear, Flashing),
        Sees(HeadControl, 12, Valve));
}
