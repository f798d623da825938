using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>One plain call of each fault, as changes to a sound plant.</summary>
internal static class PlainCases
{
    // R404A cooler, 75 degF outside: 56 psig is 20.5 degF of suction, 225 psig is 97 degF of condensing (dew).
    private static readonly string[] Sound =
    [
        "refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "design_evaporator_td 12 degF", "head_pressure_control valve",
        "head_pressure_control_setting 85 degF", "setpoint 36 degF", "differential 3 degF", "box_temperature 38 degF", "box_temperature_check 38 degF",
        "calling_for_cooling yes", "coil_ice none", "evaporator_fans all", "door_condition good", "solenoid_energised yes", "defrost_active no",
        "ambient_temperature 75 degF", "compressor running", "condenser_fans all", "condenser_coil clean", "sight_glass clear",
        "suction_pressure 56 psig", "discharge_pressure 225 psig", "suction_line_temperature_at_bulb 35 degF", "liquid_line_temperature 92 degF",
    ];

    public static IReadOnlyDictionary<FaultCode, string> Changes { get; } = new Dictionary<FaultCode, string>
    {
        [FaultCode.NoFault] = "",
        [FaultCode.Undercharge] = "sight_glass flashing;liquid_line_temperature 97.5 degF;suction_pressure 42 psig;suction_line_temperature_at_bulb 37 degF",
        [FaultCode.Overcharge] = "discharge_pressure 300 psig;liquid_line_temperature 92 degF;high_side_standing_pressure 162 psig",
        [FaultCode.Noncondensables] = "discharge_pressure 300 psig;liquid_line_temperature 98 degF;high_side_standing_pressure 185 psig",
        [FaultCode.CondenserAirflow] = "discharge_pressure 310 psig;liquid_line_temperature 114 degF;condenser_coil dirty",
        [FaultCode.HeadPressureControlLow] = "ambient_temperature 10 degF;discharge_pressure 80 psig;liquid_line_temperature 32 degF;suction_pressure 38 psig;suction_line_temperature_at_bulb 36 degF",
        [FaultCode.HeadPressureControlHigh] = "discharge_pressure 300 psig;liquid_line_temperature 116.5 degF",
        [FaultCode.LiquidLineRestriction] = "sight_glass flashing;suction_pressure 30 psig;suction_line_temperature_at_bulb 36 degF;drier_inlet_temperature 92 degF;drier_outlet_temperature 82 degF;discharge_pressure 205 psig;liquid_line_temperature 87 degF",
        [FaultCode.ExpansionValveStarving] = "suction_pressure 32 psig;suction_line_temperature_at_bulb 36 degF;discharge_pressure 200 psig;liquid_line_temperature 85 degF",
        [FaultCode.ExpansionValveOverfeeding] = "suction_line_temperature_at_bulb 25 degF;suction_line_temperature_at_compressor 28 degF",
        [FaultCode.EvaporatorAirflow] = "evaporator_fans some;suction_pressure 40 psig;suction_line_temperature_at_bulb 20 degF;evaporator_air_in 38 degF;evaporator_air_out 24 degF",
        [FaultCode.CoilIced] = "coil_ice blocked;suction_pressure 35 psig;suction_line_temperature_at_bulb 14 degF",
        [FaultCode.CompressorInefficient] = "suction_pressure 72 psig;box_temperature 44 degF;box_temperature_check 44 degF;suction_line_temperature_at_bulb 41 degF;discharge_pressure 190 psig;liquid_line_temperature 82 degF;compressor_current 6 A;rated_current 11 A",
        [FaultCode.CompressorNotRunning] = "compressor off;suction_pressure 90 psig;discharge_pressure 91 psig;condenser_fans none;box_temperature 48 degF;box_temperature_check 48 degF",
        [FaultCode.NoLiquidFeed] = "compressor off;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;box_temperature 48 degF;box_temperature_check 48 degF",
        [FaultCode.NoCallForCooling] = "compressor off;calling_for_cooling no;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;box_temperature 46 degF;box_temperature_check 46 degF",
        [FaultCode.ControlSetting] = "compressor off;calling_for_cooling no;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;setpoint 46 degF;box_temperature 47 degF;box_temperature_check 47 degF",
        [FaultCode.SensorError] = "box_temperature 46 degF",
        [FaultCode.ExcessLoad] = "door_condition left-open;box_temperature 50 degF;box_temperature_check 50 degF;suction_pressure 72 psig;suction_line_temperature_at_bulb 46 degF;discharge_pressure 245 psig;liquid_line_temperature 98 degF",
    };

    public static Assessment Of(FaultCode fault) => Assessor.Assess(With(Changes[fault]));

    /// <summary>The sound plant with these facts put in place of its own.</summary>
    public static FactSet With(string changes)
    {
        var facts = FactsOf.Visit(Sound);
        foreach (var change in changes.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            facts = facts.With(FactsOf.Value(change));
        }

        return facts;
    }
}
