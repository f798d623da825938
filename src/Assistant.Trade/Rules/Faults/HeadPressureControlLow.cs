using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The head is not held up in the cold: the condenser works whole, so the split is near its design while the head is far under the setting, with a clear glass. Under the setting with a flashing glass is first a charge question.</summary>
internal static class HeadPressureControlLow
{
    public static FaultRule Rule { get; } = new(
        FaultCode.HeadPressureControlLow,
        "common practice",
        [CautionCode.LockOut, CautionCode.RoofWeather, CautionCode.MovingFan],
        [FactCatalogue.SightGlass, FactCatalogue.AmbientTemperature, FactCatalogue.HeadPressureControlSetting],
        AtLeast(SuperheatExcess, -1, 0.8),
        AtMost(HeadExcess, -2, 0.8),
        AtLeast(ControlDue, 1, 1),
        AtMost(HeadOverSetting, -2.5, 0.8).Proving(),
        Between(ColdSplitExcess, -6, 4, 8).Proving(),
        Sees(SightGlass, 14, Clear).Proving(),
        Between(Subcooling, 1.2, 6, 0.5),
        AtLeast(TdShare, 0.9, 0.12),
        AtLeast(ValveDemand, 0.95, 0.08),
        Sees(CoilIce, 16, NoIce, LightIce, DistributorEnd),
        Sees(HeadControl, 12, Valve, FanCycling));
}
