using System.Collections.Immutable;
using Assistant.Trade.Rules.Faults;

namespace Assistant.Trade.Rules;

/// <summary>Every rule, in the contract's order of codes.</summary>
internal static class FaultRules
{
    public static ImmutableArray<FaultRule> All { get; } =
    [
        Undercharge.Rule,
        Overcharge.Rule,
        Noncondensables.Rule,
        CondenserAirflow.Rule,
        HeadPressureControlLow.Rule,
        HeadPressureControlHigh.Rule,
        LiquidLineRestriction.Rule,
        ExpansionValveStarving.Rule,
        ExpansionValveOverfeeding.Rule,
        EvaporatorAirflow.Rule,
        CoilIced.Rule,
        CompressorInefficient.Rule,
        CompressorNotRunning.Rule,
        NoLiquidFeed.Rule,
        NoCallForCooling.Rule,
        ControlSetting.Rule,
        SensorError.Rule,
        ExcessLoad.Rule,
        NoFault.Rule,
    ];

    public static FaultRule Of(FaultCode code) => All[(int)code];
}
