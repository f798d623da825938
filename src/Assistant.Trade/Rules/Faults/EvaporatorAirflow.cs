using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Thresholds;
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
        Between(SuperheatExcess, SuperheatLimits.LittleAirLow, SuperheatLimits.LittleAirHigh, SuperheatLimits.Scatter),
        AtLeast(TdShare, CoilLimits.LittleAirTd, CoilLimits.FaultyTdScatter),
        AtLeast(AirShare, CoilLimits.LittleAirFall, CoilLimits.AirScatter),
        Sees(EvaporatorFans, Weights.CoilFansTurn, SomeFans, NoFans));
}
