using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        AtLeast(Subcooling, 4, 0.8),
        AtLeast(HeadExcess, 1.5, 0.8),
        AtLeast(HeadOverSetting, 0, 0.8),
        AtLeast(StandingExcess, 1.8, 0.3).Proving());
}
