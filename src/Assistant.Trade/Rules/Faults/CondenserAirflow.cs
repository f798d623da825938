using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>The condenser cannot give off its heat: split well over the design with a dirty coil or a fan out, subcooling as usual.</summary>
internal static class CondenserAirflow
{
    public static FaultRule Rule { get; } = new(
        FaultCode.CondenserAirflow,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.LockOut, CautionCode.MovingFan, CautionCode.Electrical],
        [FactCatalogue.CondenserCoil, FactCatalogue.CondenserFans],
        AtLeast(HeadExcess, 2.5, 0.8),
        AtLeast(HeadOverSetting, 0, 0.8),
        Between(Subcooling, 1.7, 6, 0.5),
        AtLeast(CondenserObstruction, 0.5, 0.22));
}
