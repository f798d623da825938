using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Air or another gas in the high side: the head is high running and stays above saturation at ambient when standing.</summary>
internal static class Noncondensables
{
    public static FaultRule Rule { get; } = new(
        FaultCode.Noncondensables,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.NoVenting],
        [FactCatalogue.HighSideStandingPressure, FactCatalogue.LiquidLineTemperature],
        AtLeast(Subcooling, SubcoolingLimits.UnderGas, SubcoolingLimits.FilledScatter),
        AtLeast(HeadExcess, HeadLimits.Over, HeadLimits.Scatter),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        AtLeast(StandingExcess, StandingLimits.Gas, StandingLimits.LevellingScatter).Proving());
}
