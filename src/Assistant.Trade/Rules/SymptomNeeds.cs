using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Trade.Rules;

/// <summary>The facts a symptom is read from, in the order in which they are best taken.</summary>
internal static class SymptomNeeds
{
    private static readonly Fact[][] Needs = [.. Enum.GetValues<Symptom>().Select(Of)];

    public static ReadOnlySpan<Fact> For(Symptom symptom) => Needs[(int)symptom];

    private static Fact[] Of(Symptom symptom) => symptom switch
    {
        Symptom.SuperheatExcess => [Refrigerant, SuctionLineTemperatureAtBulb, SuctionPressure],
        Symptom.Subcooling => [Refrigerant, DischargePressure, LiquidLineTemperature],
        Symptom.HeadExcess or Symptom.SplitShare => [Refrigerant, DischargePressure, AmbientTemperature],
        Symptom.ControlDue => [FactCatalogue.AmbientTemperature, HeadPressureControlSetting],
        Symptom.HeadOverSetting or Symptom.ColdSplitExcess => [Refrigerant, DischargePressure, AmbientTemperature, HeadPressureControlSetting],
        Symptom.TdShare => [Refrigerant, BoxTemperature, SuctionPressure],
        Symptom.ValveDemand => [Refrigerant, SuctionPressure, DischargePressure],
        Symptom.CondenserObstruction => [FactCatalogue.CondenserCoil, FactCatalogue.CondenserFans],
        Symptom.AirShare => [Refrigerant, EvaporatorAirIn, EvaporatorAirOut, SuctionPressure],
        Symptom.DrierDrop => [DrierInletTemperature, DrierOutletTemperature],
        Symptom.LiquidLineDrop => [LiquidLineTemperatureAtCoil, LiquidLineTemperature],
        Symptom.StandingExcess => [Refrigerant, AmbientTemperature, HighSideStandingPressure],
        Symptom.CompressorSuperheat => [Refrigerant, SuctionPressure, SuctionLineTemperatureAtCompressor],
        Symptom.CurrentShare => [RatedCurrent, CompressorCurrent],
        Symptom.CompressorEfficiency => [Refrigerant, SuctionPressure, DischargePressure, SuctionLineTemperatureAtCompressor, DischargeLineTemperature],
        Symptom.BoxOverCall or Symptom.BoxOverSetpoint => [BoxTemperature, Setpoint],
        Symptom.ThermometerGap => [BoxTemperature, BoxTemperatureCheck],
        Symptom.SettingExcess => [Setpoint, Differential],
        Symptom.RestingGap => [Refrigerant, FactCatalogue.Compressor, SuctionPressure, DischargePressure],
        Symptom.RestingTd => [Refrigerant, FactCatalogue.Compressor, BoxTemperature, SuctionPressure],
        Symptom.HighSideOverAmbient => [Refrigerant, DischargePressure, AmbientTemperature],
        Symptom.ProductOverBox => [BoxTemperature, ProductTemperature],
        Symptom.EqualisedOverColdest => [Refrigerant, StandingPressure, AmbientTemperature, BoxTemperature],
        _ => [Reasons.FactOf(symptom)!],
    };
}
