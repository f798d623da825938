using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>
/// Duty and valve demand against design, worked by hand from R134a's handbook table (from memory): 0 degC 2.928 bar, 14.43 kg/m3, 398.6 kJ/kg of vapour;
/// -20 degC 1.327 bar, 6.784 kg/m3, 386.6 kJ/kg; 40 degC 10.17 bar; 50 degC 13.18 bar; liquid at 37 degC 252.0 kJ/kg and 1159 kg/m3, at 47 degC 267.0 and 1116.
/// </summary>
public class DutyShareTests
{
    // Design: coil at 1.11 degC, so 0 at the unit; condensing at 35 + 15 = 50 degC. Gauges: 0.314 bar is -20 degC, 1.915 bar 0, 9.15 bar 40, 12.17 bar 50.
    private const string Plant = "refrigerant R134a;application cooler;compressor running;setpoint 9.111 degC;design_evaporator_td 8 K;design_condenser_split 15 K;";

    [Fact]
    public void At_design_pressures_the_design_duty_is_done_through_the_design_opening()
    {
        var duty = DutyShare.Of(State(Plant + "suction_pressure 1.915 bar;discharge_pressure 12.17 bar;liquid_line_temperature 47 degC"));

        Assert.Equal(1, duty.Evaporator, 0.01);
        Assert.Equal(1, duty.Condenser, 0.01);
        Assert.Equal(1, duty.ValveDemand, 0.01);
    }

    // 5.327 kg/s against 12.74 for a cubic metre a second of displacement; 134.6 and 195.9 kJ/kg against 131.6 and 178.6.
    [Theory]
    [InlineData("suction_pressure 0.314 bar;discharge_pressure 9.15 bar;liquid_line_temperature 37 degC")]
    [InlineData("suction_pressure 0.314 bar;discharge_pressure 9.15 bar")]
    [InlineData("saturated_suction_temperature -20 degC;saturated_condensing_temperature 40 degC")]
    public void At_twenty_kelvins_less_of_suction_less_than_half_of_it_is_done(string readings)
    {
        var duty = DutyShare.Of(State(Plant + readings));

        Assert.Equal(0.428, duty.Evaporator, 0.01);
        Assert.Equal(0.459, duty.Condenser, 0.01);
        Assert.Equal(0.442, duty.ValveDemand, 0.01);
    }

    [Fact]
    public void The_coils_own_gauge_stands_a_lines_drop_over_the_units()
    {
        // 2.04 bar is 1.11 degC.
        var duty = DutyShare.Of(State(Plant + "suction_pressure_at_evaporator 2.04 bar;discharge_pressure 12.17 bar;liquid_line_temperature 47 degC"));

        Assert.Equal(1, duty.Evaporator, 0.015);
    }

    [Fact]
    public void Without_a_head_the_design_one_is_taken_and_the_valve_not_judged()
    {
        var duty = DutyShare.Of(State(Plant + "suction_pressure 1.915 bar"));

        Assert.Equal((1, 1), (duty.Evaporator, duty.Condenser), new Near(0.01));
        Assert.Equal(double.NaN, duty.ValveDemand);
    }

    [Theory]
    [InlineData("discharge_pressure 12.17 bar")]
    [InlineData("suction_pressure 9.15 bar;discharge_pressure 9.15 bar")]
    [InlineData("suction_pressure 1.915 bar;discharge_pressure 12.17 bar;liquid_line_temperature 150 degC")]
    public void Where_it_cannot_be_reckoned_the_design_duty_is_taken(string readings)
    {
        var duty = DutyShare.Of(State(Plant + readings));

        Assert.Equal((1, 1, double.NaN), (duty.Evaporator, duty.Condenser, duty.ValveDemand));
    }

    [Fact]
    public void A_coil_pumped_nearly_empty_is_taken_for_a_tenth_of_the_duty() =>
        Assert.Equal(0.1, DutyShare.Of(State(Plant + "saturated_suction_temperature -55 degC;discharge_pressure 12.17 bar")).Evaporator, 0.001);

    [Fact]
    public void Twice_the_duty_is_the_most_that_is_believed()
    {
        var duty = DutyShare.Of(State(Plant + "saturated_suction_temperature 40 degC;saturated_condensing_temperature 50 degC"));

        Assert.Equal((2, 2), (duty.Evaporator, duty.Condenser), new Near(0.001));
    }

    // 0 degC in a cooler's room of 2, -20 in a freezer's, where no setpoint is known; the TD 6.67 K and 5.56, the line 1.11.
    [Theory]
    [InlineData("application cooler;saturated_suction_temperature -5.778 degC;saturated_condensing_temperature 48.889 degC")]
    [InlineData("application freezer;saturated_suction_temperature -26.667 degC;saturated_condensing_temperature 45 degC")]
    public void Without_a_setpoint_the_usual_room_is_taken(string plant) =>
        Assert.Equal(1, DutyShare.Of(State("refrigerant R134a;compressor running;" + plant)).Evaporator, 0.005);

    // A cooler's usual superheat is 5.56 K. A low head wants more opening than at design; from a tenth more on the valve is wide open and the superheat climbs, by up to 8 K.
    [Theory]
    [InlineData("saturated_condensing_temperature 50 degC", 20, 14.4)]
    [InlineData("saturated_condensing_temperature 14 degC", 20, 4.3)]
    [InlineData("saturated_condensing_temperature 14 degC", 10, 0)]
    [InlineData("saturated_condensing_temperature 14 degC", 5, -2.8)]
    public void Superheat_for_want_of_head_is_not_held_against_the_valve(string head, double superheat, double excess) =>
        Assert.Equal(
            excess,
            Of(FormattableString.Invariant($"{Plant}saturated_suction_temperature 0 degC;superheat {superheat} K;{head}"), Symptom.SuperheatExcess).Value,
            0.25);

    private sealed class Near(double by) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) <= by && Math.Abs(x.Item2 - y.Item2) <= by;

        public int GetHashCode((double, double) obj) => 0;
    }
}
