using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules.Plausibility;

/// <summary>
/// Two readings beside each other: heat flows from warm to cold, and the same air has one temperature. R134a: 1.92 bar is 0 degC, 4.7 bar 20 degC and
/// 9.15 bar 40 degC by the gauge (handbook saturation table, from memory).
/// </summary>
public class ReadingPairTests
{
    private const string Plant = "refrigerant R134a;compressor running;";

    // The same temperature twice is never a contradiction where one flows into the other or both are the same air.
    [Theory]
    [InlineData("box_temperature 5 degC;box_temperature_check 5 degC")]
    [InlineData("box_temperature 5 degC;evaporator_air_in 5 degC")]
    [InlineData("box_temperature_check 5 degC;evaporator_air_in 5 degC")]
    [InlineData("box_temperature 5 degC;product_temperature 5 degC")]
    [InlineData("box_temperature_check 5 degC;product_temperature 5 degC")]
    [InlineData("box_temperature 5 degC;setpoint 5 degC")]
    [InlineData("box_temperature_check 5 degC;setpoint 5 degC")]
    [InlineData("evaporator_air_in 5 degC;setpoint 5 degC")]
    [InlineData("evaporator_air_in 5 degC;evaporator_air_out 5 degC")]
    [InlineData("box_temperature 5 degC;evaporator_air_out 5 degC")]
    [InlineData("box_temperature_check 5 degC;evaporator_air_out 5 degC")]
    [InlineData("evaporator_air_in 0 degC;suction_pressure 1.92 bar")]
    [InlineData("box_temperature_check 0 degC;suction_pressure 1.92 bar")]
    [InlineData("box_temperature 0 degC;suction_pressure 1.92 bar")]
    [InlineData("evaporator_air_in 0 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("box_temperature 0 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("evaporator_air_out 0 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("evaporator_air_out 0 degC;suction_pressure 1.92 bar")]
    [InlineData("evaporator_air_in 0 degC;suction_line_temperature_at_bulb 0 degC")]
    [InlineData("box_temperature_check 0 degC;suction_line_temperature_at_bulb 0 degC")]
    [InlineData("box_temperature 0 degC;suction_line_temperature_at_bulb 0 degC")]
    [InlineData("suction_line_temperature_at_bulb 0 degC;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_bulb 0 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("suction_pressure_at_evaporator 1.92 bar;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_compressor 0 degC;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_compressor 0 degC;suction_line_temperature_at_bulb 0 degC")]
    [InlineData("discharge_pressure 9.15 bar;ambient_temperature 40 degC")]
    [InlineData("discharge_pressure 9.15 bar;liquid_pressure 9.15 bar")]
    [InlineData("discharge_pressure 9.15 bar;liquid_line_temperature 40 degC")]
    [InlineData("discharge_pressure 9.15 bar;drier_inlet_temperature 40 degC")]
    [InlineData("liquid_pressure 9.15 bar;liquid_line_temperature 40 degC")]
    [InlineData("liquid_line_temperature 30 degC;ambient_temperature 30 degC")]
    [InlineData("liquid_line_temperature 30 degC;drier_inlet_temperature 30 degC")]
    [InlineData("condenser_outlet_temperature 30 degC;liquid_line_temperature 30 degC")]
    [InlineData("discharge_pressure 9.15 bar;condenser_outlet_temperature 40 degC")]
    [InlineData("condenser_outlet_temperature 30 degC;ambient_temperature 30 degC")]
    [InlineData("drier_inlet_temperature 30 degC;drier_outlet_temperature 30 degC")]
    [InlineData("liquid_line_temperature 30 degC;drier_outlet_temperature 30 degC")]
    [InlineData("liquid_line_temperature 30 degC;liquid_line_temperature_at_coil 30 degC")]
    [InlineData("drier_outlet_temperature 30 degC;liquid_line_temperature_at_coil 30 degC")]
    [InlineData("high_side_standing_pressure 4.7 bar;ambient_temperature 20 degC")]
    [InlineData("discharge_pressure 9.15 bar;high_side_standing_pressure 9.15 bar")]
    [InlineData("discharge_pressure 9.15 bar;head_pressure_control_setting 40 degC")]
    public void The_same_temperature_twice_goes_together(string pair) => Assert.Empty(Rejected(pair));

    // What a sound or a faulty plant really shows.
    [Theory]
    [InlineData("box_temperature 5 degC;evaporator_air_out 1 degC")]
    [InlineData("box_temperature 20 degC;setpoint 2 degC")]
    [InlineData("box_temperature 2 degC;suction_pressure 0.3 bar")]
    [InlineData("suction_line_temperature_at_bulb 5 degC;suction_pressure 0.3 bar")]
    [InlineData("suction_line_temperature_at_compressor 25 degC;suction_pressure 0.3 bar")]
    [InlineData("suction_line_temperature_at_compressor 20 degC;suction_line_temperature_at_bulb 2 degC")]
    [InlineData("discharge_pressure 9.15 bar;suction_pressure 1.92 bar")]
    [InlineData("discharge_line_temperature 95 degC;discharge_pressure 9.15 bar")]
    [InlineData("discharge_pressure 9.15 bar;ambient_temperature -10 degC")]
    [InlineData("discharge_pressure 9.15 bar;liquid_line_temperature 15 degC")]
    [InlineData("liquid_line_temperature 38 degC;ambient_temperature -5 degC")]
    [InlineData("condenser_outlet_temperature 12 degC;liquid_line_temperature 44 degC")]
    [InlineData("drier_inlet_temperature 38 degC;drier_outlet_temperature 24 degC")]
    [InlineData("liquid_line_temperature 38 degC;liquid_line_temperature_at_coil 18 degC")]
    [InlineData("high_side_standing_pressure 6 bar;ambient_temperature 20 degC")]
    [InlineData("discharge_pressure 4.7 bar;head_pressure_control_setting 30 degC")]
    public void What_plants_show_goes_together(string pair) => Assert.Empty(Rejected(pair));

    // Heat does not flow from cold to warm, and no plant holds such distances.
    [Theory]
    [InlineData("box_temperature 5 degC;box_temperature_check 25 degC")]
    [InlineData("box_temperature 25 degC;box_temperature_check 5 degC")]
    [InlineData("box_temperature 5 degC;evaporator_air_in 25 degC")]
    [InlineData("box_temperature_check 5 degC;evaporator_air_in 12 degC")]
    [InlineData("box_temperature_check 12 degC;evaporator_air_in 5 degC")]
    [InlineData("box_temperature 5 degC;product_temperature 30 degC")]
    [InlineData("box_temperature 30 degC;product_temperature 5 degC")]
    [InlineData("box_temperature_check 5 degC;product_temperature 25 degC")]
    [InlineData("box_temperature 40 degC;setpoint 2 degC")]
    [InlineData("box_temperature -20 degC;setpoint 3 degC")]
    [InlineData("evaporator_air_in -10 degC;setpoint 3 degC")]
    [InlineData("evaporator_air_in 5 degC;evaporator_air_out 15 degC")]
    [InlineData("evaporator_air_in 30 degC;evaporator_air_out 5 degC")]
    [InlineData("box_temperature 5 degC;evaporator_air_out 20 degC")]
    [InlineData("box_temperature_check 5 degC;evaporator_air_out 15 degC")]
    [InlineData("evaporator_air_in -10 degC;suction_pressure 1.92 bar")]
    [InlineData("box_temperature_check -10 degC;suction_pressure 1.92 bar")]
    [InlineData("box_temperature -15 degC;suction_pressure 1.92 bar")]
    [InlineData("evaporator_air_in -10 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("box_temperature -15 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("evaporator_air_out -10 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("evaporator_air_out -10 degC;suction_pressure 1.92 bar")]
    [InlineData("evaporator_air_in 0 degC;suction_line_temperature_at_bulb 15 degC")]
    [InlineData("box_temperature_check 0 degC;suction_line_temperature_at_bulb 15 degC")]
    [InlineData("box_temperature 0 degC;suction_line_temperature_at_bulb 20 degC")]
    [InlineData("suction_line_temperature_at_bulb -10 degC;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_bulb -10 degC;suction_pressure_at_evaporator 1.92 bar")]
    [InlineData("suction_pressure_at_evaporator 1.92 bar;suction_pressure 4.7 bar")]
    [InlineData("suction_pressure_at_evaporator 4.7 bar;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_compressor -10 degC;suction_pressure 1.92 bar")]
    [InlineData("suction_line_temperature_at_compressor -20 degC;suction_line_temperature_at_bulb 0 degC")]
    [InlineData("discharge_pressure 1.92 bar;suction_pressure 9.15 bar")]
    [InlineData("discharge_line_temperature 30 degC;discharge_pressure 9.15 bar")]
    [InlineData("discharge_pressure 4.7 bar;ambient_temperature 35 degC")]
    [InlineData("discharge_pressure 9.15 bar;liquid_pressure 16 bar")]
    [InlineData("discharge_pressure 9.15 bar;liquid_pressure 4.7 bar")]
    [InlineData("discharge_pressure 9.15 bar;liquid_line_temperature 55 degC")]
    [InlineData("discharge_pressure 9.15 bar;drier_inlet_temperature 55 degC")]
    [InlineData("liquid_pressure 9.15 bar;liquid_line_temperature 55 degC")]
    [InlineData("liquid_line_temperature 10 degC;ambient_temperature 30 degC")]
    [InlineData("liquid_line_temperature 30 degC;drier_inlet_temperature 40 degC")]
    [InlineData("liquid_line_temperature 40 degC;drier_inlet_temperature 30 degC")]
    [InlineData("condenser_outlet_temperature 65 degC;liquid_line_temperature 30 degC")]
    [InlineData("discharge_pressure 9.15 bar;condenser_outlet_temperature 55 degC")]
    [InlineData("condenser_outlet_temperature 10 degC;ambient_temperature 30 degC")]
    [InlineData("drier_inlet_temperature 30 degC;drier_outlet_temperature 40 degC")]
    [InlineData("drier_inlet_temperature 60 degC;drier_outlet_temperature 20 degC")]
    [InlineData("liquid_line_temperature 30 degC;drier_outlet_temperature 40 degC")]
    [InlineData("liquid_line_temperature 25 degC;liquid_line_temperature_at_coil 45 degC")]
    [InlineData("drier_outlet_temperature 25 degC;liquid_line_temperature_at_coil 45 degC")]
    [InlineData("drier_outlet_temperature 45 degC;liquid_line_temperature_at_coil 25 degC")]
    [InlineData("high_side_standing_pressure 1.92 bar;ambient_temperature 20 degC")]
    [InlineData("high_side_standing_pressure 9.15 bar;ambient_temperature 5 degC")]
    public void What_no_plant_shows_is_questioned(string pair) => Assert.NotEmpty(Rejected(pair));

    // At rest the lines take the temperature around them, so most of this holds only while it runs.
    [Theory]
    [InlineData("suction_line_temperature_at_bulb -10 degC;suction_pressure 1.92 bar")]
    [InlineData("discharge_pressure 1.92 bar;suction_pressure 1.92 bar")]
    [InlineData("discharge_line_temperature 20 degC;discharge_pressure 9.15 bar")]
    [InlineData("liquid_line_temperature 10 degC;ambient_temperature 30 degC")]
    public void At_rest_no_flow_orders_them(string pair) =>
        Assert.Empty(Assessor.Assess(FactsOf.Visit(("refrigerant R134a;compressor off;" + pair).Split(';'))).Rejected);

    [Fact]
    public void Of_many_readings_the_one_that_quarrels_with_most_is_put_aside_alone()
    {
        var rejected = Rejected("box_temperature 5 degC;evaporator_air_in 5 degC;evaporator_air_out 2 degC;suction_line_temperature_at_bulb 1 degC;suction_pressure 9.15 bar;discharge_pressure 9.2 bar");

        Assert.Equal(["suction_pressure"], rejected);
    }

    [Fact]
    public void Where_nothing_tells_two_apart_both_are_questioned() =>
        Assert.Equal(["suction_pressure", "suction_pressure_at_evaporator"], Rejected("suction_pressure_at_evaporator 1.92 bar;suction_pressure 4.7 bar"));

    private static IEnumerable<string> Rejected(string pair) =>
        Assessor.Assess(FactsOf.Visit((Plant + pair).Split(';'))).Rejected.Select(r => r.Value.Fact.Name);
}
