using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Derivation;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>What a person is shown, worked by hand. R134a: 1.92 bar is 0 degC, 3.13 bar 10, 9.15 bar 40 degC by the gauge (handbook saturation table, from memory).</summary>
public class DerivedValueTests
{
    private const string Plant = "refrigerant R134a;application cooler;compressor running;";

    [Fact]
    public void The_whole_of_a_plain_set_follows()
    {
        var derived = Of(Plant + "suction_pressure 1.92 bar;discharge_pressure 9.15 bar;suction_line_temperature_at_bulb 8 degC;liquid_line_temperature 35 degC;ambient_temperature 28 degC;box_temperature 10 degC");

        Assert.Equal(0, derived.SaturatedSuctionTemperature!.Value.Degrees, 0.1);
        Assert.Equal(40, derived.SaturatedCondensingTemperature!.Value.Degrees, 0.1);
        Assert.Equal(8, derived.Superheat!.Value.Kelvins, 0.1);
        Assert.True(derived.SuperheatIsApproximate);
        Assert.Equal(5, derived.Subcooling!.Value.Kelvins, 0.1);
        Assert.Equal(12, derived.CondenserSplit!.Value.Kelvins, 0.1);
        Assert.Equal(10, derived.EvaporatorTd!.Value.Kelvins, 0.1);

        // 1.01325 bar of air: 10.16 over 2.93 bar.
        Assert.Equal(3.465, derived.CompressionRatio!.Value, 0.005);
        Assert.Null(derived.FloodedFraction);
    }

    [Fact]
    public void The_coils_own_gauge_gives_superheat_and_td_and_the_units_the_suction()
    {
        var derived = Of(Plant + "suction_pressure 1.92 bar;suction_pressure_at_evaporator 3.13 bar;suction_line_temperature_at_bulb 14 degC;box_temperature 17 degC");

        Assert.Equal(0, derived.SaturatedSuctionTemperature!.Value.Degrees, 0.1);
        Assert.Equal(4, derived.Superheat!.Value.Kelvins, 0.1);
        Assert.False(derived.SuperheatIsApproximate);
        Assert.Equal(7, derived.EvaporatorTd!.Value.Kelvins, 0.1);
    }

    [Fact]
    public void Where_only_the_coil_was_read_its_saturation_is_shown() =>
        Assert.Equal(10, Of(Plant + "suction_pressure_at_evaporator 3.13 bar").SaturatedSuctionTemperature!.Value.Degrees, 0.1);

    [Fact]
    public void A_superheat_said_outright_is_not_approximate()
    {
        var derived = Of(Plant + "superheat 6 K;suction_pressure 1.92 bar");

        Assert.Equal(6, derived.Superheat!.Value.Kelvins);
        Assert.False(derived.SuperheatIsApproximate);
    }

    [Fact]
    public void What_was_read_comes_before_what_was_said()
    {
        var derived = Of(Plant + "superheat 20 K;subcooling 20 K;condenser_split 30 K;suction_pressure 1.92 bar;suction_line_temperature_at_bulb 8 degC;discharge_pressure 9.15 bar;liquid_line_temperature 35 degC;ambient_temperature 28 degC");

        Assert.Equal(8, derived.Superheat!.Value.Kelvins, 0.1);
        Assert.Equal(5, derived.Subcooling!.Value.Kelvins, 0.1);
        Assert.Equal(12, derived.CondenserSplit!.Value.Kelvins, 0.1);
    }

    [Theory]
    [InlineData("suction_pressure 1.92 bar;superheat 20 K", 20)]
    [InlineData("suction_line_temperature_at_bulb 8 degC;superheat 20 K", 20)]
    public void Half_of_a_reading_leaves_the_one_said(string facts, double superheat) => Assert.Equal(superheat, Of(Plant + facts).Superheat!.Value.Kelvins);

    [Theory]
    [InlineData("liquid_line_temperature 35 degC;subcooling 20 K")]
    [InlineData("discharge_pressure 9.15 bar;subcooling 20 K")]
    public void Half_of_the_liquids_readings_leaves_the_subcooling_said(string facts) => Assert.Equal(20, Of(Plant + facts).Subcooling!.Value.Kelvins);

    [Theory]
    [InlineData("ambient_temperature 28 degC;condenser_split 20 K")]
    [InlineData("discharge_pressure 9.15 bar;condenser_split 20 K")]
    public void Half_of_the_splits_readings_leaves_the_split_said(string facts) => Assert.Equal(20, Of(Plant + facts).CondenserSplit!.Value.Kelvins);

    // 1 - 15/(30 - 0) = 0.5; a control that floods nothing, a plate that says nothing, an ambient over the setting.
    [Theory]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;design_condenser_split 15 K;ambient_temperature 0 degC", 0.5)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;design_condenser_split 15 K;ambient_temperature 25 degC", 0.0)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;design_condenser_split 15 K;ambient_temperature 31 degC", null)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;design_condenser_split 15 K;ambient_temperature 30 degC", null)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;design_condenser_split 0 K;ambient_temperature 0 degC", null)]
    [InlineData("head_pressure_control valve;head_pressure_control_setting 30 degC;ambient_temperature 0 degC", null)]
    [InlineData("head_pressure_control valve;design_condenser_split 15 K;ambient_temperature 0 degC", null)]
    [InlineData("head_pressure_control fan-cycling;head_pressure_control_setting 30 degC;design_condenser_split 15 K;ambient_temperature 0 degC", null)]
    public void Only_a_valve_with_a_setting_over_the_weather_floods_the_condenser(string facts, double? fraction) => Assert.Equal(fraction, Of(Plant + facts).FloodedFraction);

    [Theory]
    [InlineData("suction_pressure 1.92 bar")]
    [InlineData("discharge_pressure 9.15 bar")]
    public void One_pressure_makes_no_ratio(string facts) => Assert.Null(Of(Plant + facts).CompressionRatio);

    private static DerivedValues Of(string facts) => Derivations.Of(State(facts));
}
