using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        AtLeast(HeadExcess, HeadLimits.WellOver, HeadLimits.Scatter),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        AtMost(Subcooling, SubcoolingLimits.MixedAway, SubcoolingLimits.Scatter).Proving(),
        Sees(SightGlass, Weights.GlassSpeaks, Clear, Flashing),
        Sees(HeadControl, Weights.HeadControl, Valve));
}
