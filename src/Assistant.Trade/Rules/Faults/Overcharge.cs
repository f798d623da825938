using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
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
        AtLeast(Subcooling, 5.5, 0.8),
        AtLeast(HeadExcess, 1.5, 0.8),
        AtLeast(HeadOverSetting, 0, 0.8),
        Between(StandingExcess, -1.2, 1.2, 0.3).Proving());
}
