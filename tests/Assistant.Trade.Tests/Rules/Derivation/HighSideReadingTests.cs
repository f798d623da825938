using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>
/// The high side's readings against what a sound plant would show, worked by hand. R134a: 4.7 bar is 20 degC and 9.15 bar 40 degC by the gauge
/// (handbook saturation table, from memory); without a suction pressure the design duty is taken.
/// </summary>
public class HighSideReadingTests
{
    private const string Plant = "refrigerant R134a;application cooler;compressor running;discharge_pressure 9.15 bar;";
    private const string Plate = "design_condenser_split 14 K;";

    [Theory]
    [InlineData("liquid_line_temperature 35 degC", 5)]
    [InlineData("liquid_line_temperature 18 degC;liquid_pressure 4.7 bar", 2)]
    [InlineData("subcooling 4 K", 4)]
    public void Subcooling_is_bubble_less_line(string readings, double kelvins) => Assert.Equal(kelvins, Of(Plant + readings, Symptom.Subcooling).Value, 0.15);

    [Fact]
    public void Without_a_receiver_subcooling_leaves_three_kelvins_more_open()
    {
        Assert.Equal(0.62, Of(Plant + "liquid_line_temperature 35 degC", Symptom.Subcooling).Error, 0.05);
        Assert.Equal(3.06, Of(Plant + "liquid_line_temperature 35 degC;liquid_receiver no", Symptom.Subcooling).Error, 0.05);
        Assert.Equal(0.62, Of(Plant + "liquid_line_temperature 35 degC;liquid_receiver yes", Symptom.Subcooling).Error, 0.05);
    }

    [Fact]
    public void A_condensing_temperature_said_outright_gives_the_subcooling_as_well() =>
        Assert.Equal(5, Of("refrigerant R134a;compressor running;saturated_condensing_temperature 40 degC;liquid_line_temperature 35 degC", Symptom.Subcooling).Value, 0.05);

    [Fact]
    public void In_mild_weather_the_split_is_set_against_the_plates()
    {
        var excess = Of(Plant + Plate + "head_pressure_control none;ambient_temperature 20 degC", Symptom.HeadExcess);
        var share = Of(Plant + Plate + "head_pressure_control none;ambient_temperature 20 degC", Symptom.SplitShare);

        // A tenth of the plate's 14 K and 0.62 K of instruments.
        Assert.Equal((6, 1.53), (excess.Value, excess.Error), Within(0.15, 0.05));
        Assert.Equal((1.43, 0.11), (share.Value, share.Error), Within(0.015, 0.005));
    }

    [Fact]
    public void Without_a_plate_the_usual_25_degF_leave_a_quarter_open()
    {
        var excess = Of(Plant + "head_pressure_control none;ambient_temperature 20 degC", Symptom.HeadExcess);

        Assert.Equal((6.11, 3.53), (excess.Value, excess.Error), Within(0.15, 0.05));
    }

    [Fact]
    public void A_freezers_usual_split_is_18_degF() =>
        Assert.Equal(10, Of("refrigerant R134a;application freezer;compressor running;discharge_pressure 9.15 bar;head_pressure_control none;ambient_temperature 20 degC", Symptom.HeadExcess).Value, 0.15);

    // Setting less ambient less the plate's split; the usual 29 degC where there is no control.
    [Theory]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 35 degC;ambient_temperature 20 degC", 1)]
    [InlineData("head_pressure_control none;ambient_temperature 20 degC", -5)]
    [InlineData("head_pressure_control none;head_pressure_control_setting 35 degC;ambient_temperature 20 degC", -5)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 9.15 bar;ambient_temperature 20 degC", 6)]
    public void What_the_control_has_to_do_is_setting_over_weather(string facts, double kelvins) => Assert.Equal(kelvins, Of(Plant + Plate + facts, Symptom.ControlDue).Value, 0.15);

    [Theory]
    [InlineData("ambient_temperature 0 degC;head_pressure_control_setting 30 degC", 10, 26, 10)]
    [InlineData("ambient_temperature 0 degC;head_pressure_control_setting 45 degC", -5, 26, -5)]
    public void In_the_cold_the_head_is_set_against_the_controls_setting(string facts, double overSetting, double coldSplit, double excess)
    {
        var cold = Plant + Plate + "head_pressure_control valve;" + facts;

        Assert.Equal(overSetting, Of(cold, Symptom.HeadOverSetting).Value, 0.15);
        Assert.Equal(coldSplit, Of(cold, Symptom.ColdSplitExcess).Value, 0.15);
        Assert.Equal(1.53, Of(cold, Symptom.ColdSplitExcess).Error, 0.05);

        // Half a degree of the instruments is granted before it is called an excess.
        Assert.Equal(excess - (Math.Sign(excess) * 0.56), Of(cold, Symptom.HeadExcess).Value, 0.15);
        Assert.False(Of(cold, Symptom.SplitShare).IsKnown);
    }

    // The usual setting is 29 degC, give or take 4; at an ambient of 0 the head may stand from 25 to 33.
    [Theory]
    [InlineData("discharge_pressure 9.15 bar", 6.96)]
    [InlineData("discharge_pressure 4.7 bar", -4.96)]
    [InlineData("saturated_condensing_temperature 32 degC", 0)]
    [InlineData("saturated_condensing_temperature 26 degC", 0)]
    public void Without_a_setting_anything_between_the_usual_ones_is_as_it_should_be(string head, double excess) =>
        Assert.Equal(excess, Of("refrigerant R134a;application cooler;compressor running;ambient_temperature 0 degC;" + Plate + head, Symptom.HeadExcess).Value, 0.15);

    [Theory]
    [InlineData(35.9, false)]
    [InlineData(36.1, true)]
    public void The_control_is_at_work_from_two_kelvins_over_the_weather_on(double setting, bool works) =>
        Assert.Equal(works, Of(FormattableString.Invariant($"{Plant}{Plate}head_pressure_control valve;ambient_temperature 20 degC;head_pressure_control_setting {setting} degC"), Symptom.HeadOverSetting).IsKnown);

    [Fact]
    public void A_split_said_outright_stands_in_for_both_readings()
    {
        var excess = Of("refrigerant R134a;application cooler;compressor running;condenser_split 20 K;" + Plate, Symptom.HeadExcess);

        Assert.Equal((6, 1.79), (excess.Value, excess.Error), Within(0.01, 0.02));
    }

    [Theory]
    [InlineData("drier_inlet_temperature 35 degC;drier_outlet_temperature 30 degC", nameof(Symptom.DrierDrop), 5)]
    [InlineData("liquid_line_temperature 35 degC;liquid_line_temperature_at_coil 31 degC", nameof(Symptom.LiquidLineDrop), 4)]
    [InlineData("ambient_temperature 28 degC", nameof(Symptom.HighSideOverAmbient), 12)]
    [InlineData("ambient_temperature 18 degC;high_side_standing_pressure 4.7 bar", nameof(Symptom.StandingExcess), 2)]
    [InlineData("rated_current 10 A;compressor_current 6 A", nameof(Symptom.CurrentShare), 0.6)]
    public void Each_difference_is_taken_the_way_the_heat_flows(string readings, string symptom, double value) => Assert.Equal(value, Of(Plant + readings, symptom).Value, 0.15);

    [Fact]
    public void A_rated_current_of_nothing_is_no_measure() => Assert.False(Of("rated_current 0 A;compressor_current 6 A", Symptom.CurrentShare).IsKnown);

    [Theory]
    [InlineData("condenser_coil dirty", 1)]
    [InlineData("condenser_coil snowed", 1)]
    [InlineData("condenser_coil clean;condenser_fans some", 1)]
    [InlineData("condenser_fans none", 1)]
    [InlineData("condenser_coil clean;condenser_fans all", 0)]
    [InlineData("condenser_coil clean;condenser_fans cycling", 0)]
    public void A_condenser_is_seen_obstructed_by_coil_or_fans_and_sound_by_both(string seen, double value) => Assert.Equal(value, Of(seen, Symptom.CondenserObstruction).Value);

    [Theory]
    [InlineData("condenser_coil clean")]
    [InlineData("condenser_fans all")]
    public void Half_a_look_at_the_condenser_does_not_clear_it(string seen) => Assert.False(Of(seen, Symptom.CondenserObstruction).IsKnown);

    private static Comparison Within(double value, double error) => new(value, error);

    private sealed class Comparison(double value, double error) : IEqualityComparer<(double Value, double Error)>
    {
        public bool Equals((double Value, double Error) x, (double Value, double Error) y) => Math.Abs(x.Value - y.Value) <= value && Math.Abs(x.Error - y.Error) <= error;

        public int GetHashCode((double Value, double Error) obj) => 0;
    }
}
