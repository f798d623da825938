using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;
using static Assistant.Trade.Rules.Faults.Words;

namespace Assistant.Trade.Rules.Faults;

/// <summary>Too little air over the evaporator: large TD with no excess of superheat, the little air well cooled, a fan out, no ice.</summary>
internal static class EvaporatorAirflow
{
    // A TD at the upper end of what sound coils show hints at it where the air is cooled well, too.
    private static readonly Expectation LargeTd = AtLeast(TdShare, CoilLimits.LittleAirTd, CoilLimits.FaultyTdScatter);

    private static readonly Expectation FanOut = Sees(EvaporatorFans, Weights.CoilFansTurn, SomeFans, NoFans);

    public static FaultRule Rule { get; } = With(LargeTd.Hinting(), FanOut, [With(LargeTd.Proving(), FanOut.Proving(), [])]);

    // Established only with a fan seen standing: a large TD has other causes, and all fans may turn behind a blocked guard.
    private static FaultRule With(Expectation td, Expectation fans, ImmutableArray<FaultRule> otherWays) => new(
        FaultCode.EvaporatorAirflow,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.LockOut, CautionCode.MovingFan, CautionCode.Electrical],
        [FactCatalogue.EvaporatorFans, FactCatalogue.CoilIce, FactCatalogue.EvaporatorAirOut],
        Between(SuperheatExcess, SuperheatLimits.LittleAirLow, SuperheatLimits.LittleAirHigh, SuperheatLimits.Scatter),
        td,
        AtLeast(AirShare, CoilLimits.LittleAirFall, CoilLimits.AirScatter),
        fans)
    {
        OtherWays = otherWays,
    };
}
