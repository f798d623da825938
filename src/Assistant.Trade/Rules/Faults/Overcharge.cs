using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Too much charge: liquid stands in the condenser, so head and subcooling are high while the high side at rest agrees with the ambient.</summary>
internal static class Overcharge
{
    public static FaultRule Rule { get; } = new(
        FaultCode.Overcharge,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.NoVenting, CautionCode.OverfullCylinder, CautionCode.LiquidRefrigerant],
        [FactCatalogue.HighSideStandingPressure, FactCatalogue.LiquidLineTemperature],
        AtLeast(Subcooling, SubcoolingLimits.Standing, SubcoolingLimits.FilledScatter),
        AtLeast(HeadExcess, HeadLimits.Over, HeadLimits.Scatter),
        AtLeast(HeadOverSetting, HeadLimits.AtSetting, HeadLimits.Scatter),
        Between(StandingExcess, -StandingLimits.NoGas, StandingLimits.NoGas, StandingLimits.LevellingScatter).Proving());
}
