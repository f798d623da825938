using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Too little air over the evaporator: large TD with no excess of superheat, the little air well cooled, a fan out, no ice.</summary>
internal static class EvaporatorAirflow
{
    public static FaultRule Rule { get; } = new(
        FaultCode.EvaporatorAirflow,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.LockOut, CautionCode.MovingFan, CautionCode.Electrical],
        [FactCatalogue.EvaporatorFans, FactCatalogue.CoilIce, FactCatalogue.EvaporatorAirOut],
        Between(SuperheatExcess, -3, 2, 0.7),
        AtLeast(TdShare, 1.35, 0.12),
        AtLeast(AirShare, 0.48, 0.06),
        Sees(EvaporatorFans, 1.5, SomeFans, NoFans));
}
