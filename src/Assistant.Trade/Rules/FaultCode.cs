namespace Assistant.Trade.Rules;

/// <summary>The faults a verdict can name, in the contract's order; <see cref="Codes.Of(FaultCode)"/> spells them in kebab-case.</summary>
public enum FaultCode
{
    Undercharge,
    Overcharge,
    Noncondensables,
    CondenserAirflow,
    HeadPressureControlLow,
    HeadPressureControlHigh,
    LiquidLineRestriction,
    ExpansionValveStarving,
    ExpansionValveOverfeeding,
    EvaporatorAirflow,
    CoilIced,
    CompressorInefficient,
    CompressorNotRunning,
    NoLiquidFeed,
    NoCallForCooling,
    ControlSetting,
    SensorError,
    ExcessLoad,
    NoFault,
    NotEnoughEvidence,
}
