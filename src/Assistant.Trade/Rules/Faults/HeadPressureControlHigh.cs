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
        [CautionCode.HotSurface, CautionCode.LockOut, CautionCode.Ladder],
        [FactCatalogue.LiquidLineTemperature, FactCatalogue.HeadPressureControlSetting, FactCatalogue.AmbientTemperature],
        AtLeast(HeadExcess, HeadLimits.WellOver, HeadLimits.Scatter),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        AtMost(Subcooling, SubcoolingLimits.MixedAway, SubcoolingLimits.Scatter).Proving(),
        Sees(SightGlass, Weights.GlassSpeaks, Clear, Flashing),
        Sees(HeadControl, Weights.HeadControl, Valve))
    {
        // That the head is too high shows only against the air outside.
        EstablishedOnlyWith = [HeadExcess],
        OtherWays = [ByFans],
    };

    // The control stops the fans with the head far over its setting: nothing takes the subcooling away.
    private static FaultRule ByFans => new(
        FaultCode.HeadPressureControlHigh,
        "common practice",
        [CautionCode.MovingFan, CautionCode.LockOut, CautionCode.Ladder],
        [FactCatalogue.CondenserFans, FactCatalogue.HeadPressureControlSetting],
        AtLeast(HeadExcess, HeadLimits.WellOver, HeadLimits.Scatter).Proving(),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        Between(Subcooling, SubcoolingLimits.SoundLow, SubcoolingLimits.UsualHigh, SubcoolingLimits.UnsteadyScatter),
        Sees(CondenserFans, Weights.HeadControl, CyclingFans, NoFans).Proving(),
        Sees(HeadControl, Weights.HeadControl, FanCycling).Proving());
}
