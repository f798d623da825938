using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;
using static Assistant.Trade.Rules.Evidence.Expectation;
using static Assistant.Trade.Rules.Evidence.Symptom;

namespace Assistant.Trade.Rules.Faults;

/// <summary>
/// The compressor pumps less than it should: the two pressures move towards each other, the current is low, the box warm. A coil that
/// is given little to do has other causes too; proved is a weak compressor only by a second witness at the machine itself.
/// </summary>
internal static class CompressorInefficient
{
    private static readonly Expectation LittleForTheCoil = AtMost(TdShare, CoilLimits.SlackTd, CoilLimits.TdScatter);

    private static readonly Expectation LittleToReject = AtMost(SplitShare, HeadLimits.SlackSplit, HeadLimits.SplitScatter);

    private static readonly Expectation LittleCurrent = AtMost(CurrentShare, CompressorLimits.SlackCurrent, CompressorLimits.SlackCurrentScatter);

    private static readonly Expectation HotDischarge = AtMost(CompressorEfficiency, CompressorLimits.SlackWork, CompressorLimits.WorkScatter);

    public static FaultRule Rule { get; } = With(LittleForTheCoil.Hinting(), LittleToReject, LittleCurrent, HotDischarge, [
        With(LittleForTheCoil.Proving(), LittleToReject.Proving(), LittleCurrent, HotDischarge, []),
        With(LittleForTheCoil.Proving(), LittleToReject, LittleCurrent.Proving(), HotDischarge, []),
        With(LittleForTheCoil.Proving(), LittleToReject, LittleCurrent, HotDischarge.Proving(), []),
    ]);

    private static FaultRule With(Expectation coil, Expectation rejection, Expectation current, Expectation discharge, ImmutableArray<FaultRule> otherWays) => new(
        FaultCode.CompressorInefficient,
        "trade practice; directions after Rossi and Braun 1997, HVAC&R Research 3(1)",
        [CautionCode.Electrical, CautionCode.LockOut, CautionCode.HotSurface],
        [FactCatalogue.DischargePressure, FactCatalogue.SuctionPressure, FactCatalogue.CompressorCurrent, FactCatalogue.AmbientTemperature],
        Between(SuperheatExcess, SuperheatLimits.SlackLow, SuperheatLimits.SlackHigh, SuperheatLimits.SlackScatter),
        coil,
        AtMost(HeadExcess, HeadLimits.SlackHigh, HeadLimits.Scatter),
        rejection,
        current,
        discharge)
    {
        OtherWays = otherWays,
    };
}
