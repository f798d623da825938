using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>The room's readings, and those of a plant at rest, worked by hand. R134a: 1.92 bar is 0 degC, 4.7 bar 20 degC by the gauge (handbook saturation table, from memory).</summary>
public class RoomAndRestReadingTests
{
    [Theory]
    [InlineData("box_temperature 8 degC;setpoint 3 degC", nameof(Symptom.BoxOverSetpoint), 5, 0.56)]
    [InlineData("box_temperature 8 degC;setpoint 3 degC;differential 2 K", nameof(Symptom.BoxOverCall), 3, 0.56)]
    [InlineData("box_temperature 8 degC;setpoint 3 degC", nameof(Symptom.BoxOverCall), 3.33, 1.76)]
    [InlineData("box_temperature 8 degC;box_temperature_check 5 degC;evaporator_air_in 1 degC", nameof(Symptom.ThermometerGap), 3, 0.79)]
    [InlineData("box_temperature 5 degC;box_temperature_check 8 degC", nameof(Symptom.ThermometerGap), 3, 0.79)]
    [InlineData("box_temperature 8 degC;evaporator_air_in 4 degC", nameof(Symptom.ThermometerGap), 4, 0.79)]
    [InlineData("box_temperature 8 degC;product_temperature 12 degC", nameof(Symptom.ProductOverBox), 4, 0.79)]
    [InlineData("box_temperature 8 degC;evaporator_air_in 6 degC;product_temperature 12 degC", nameof(Symptom.ProductOverBox), 6, 0.79)]
    [InlineData("box_temperature 8 degC;box_temperature_check 5 degC;product_temperature 12 degC", nameof(Symptom.ProductOverBox), 7, 0.79)]
    [InlineData("box_temperature 8 degC;box_temperature_check 6 degC;product_temperature 12 degC", nameof(Symptom.ProductOverBox), 4, 0.79)]
    public void The_rooms_thermometers_are_set_against_each_other_and_the_control(string facts, string symptom, double value, double error)
    {
        Assert.Equal(value, Of(facts, symptom).Value, 0.01);
        Assert.Equal(error, Of(facts, symptom).Error, 0.01);
    }

    // 5 degC is the cooler's limit (FDA Food Code 3-501.16), -16.1 (3 degF, a setting of 0 degF and a differential of 3) the freezer's and 3.33 K the widest differential (common practice).
    [Theory]
    [InlineData("application cooler;setpoint 6 degC;differential 2 K", 3)]
    [InlineData("application cooler;setpoint 6 degC", 2.67)]
    [InlineData("application cooler;setpoint 0 degC;differential 5 K", 1.67)]
    [InlineData("application cooler;setpoint 1 degC;differential 2 K", -1.33)]
    [InlineData("application cooler;setpoint 1 degC", -2.33)]
    [InlineData("application freezer;setpoint -14 degC;differential 2 K", 4.11)]
    public void A_setting_is_wrong_by_how_warm_it_lets_the_room_become_or_by_its_width(string facts, double kelvins) => Assert.Equal(kelvins, Of(facts, Symptom.SettingExcess).Value, 0.01);

    [Theory]
    [InlineData("pulling_down yes")]
    [InlineData("charge_added 1 kg")]
    public void On_its_way_down_a_rooms_warmth_is_no_sign(string reason)
    {
        Assert.False(Of($"box_temperature 8 degC;setpoint 3 degC;{reason}", Symptom.BoxOverSetpoint).IsKnown);
        Assert.True(Of($"box_temperature 2 degC;setpoint 3 degC;{reason}", Symptom.BoxOverSetpoint).IsKnown);
        Assert.True(Of($"box_temperature 8 degC;setpoint 3 degC;{reason}", Symptom.PullingDown).IsKnown);
        Assert.False(Of($"box_temperature 4 degC;product_temperature 8 degC;{reason}", Symptom.ProductOverBox).IsKnown);
    }

    [Fact]
    public void A_room_not_said_to_be_on_its_way_down_is_not() => Assert.Equal(1, Of("box_temperature 8 degC;setpoint 3 degC;pulling_down no", Symptom.PullingDown).Value);

    [Theory]
    [InlineData("suction_pressure 1.92 bar;discharge_pressure 4.7 bar", nameof(Symptom.RestingGap), 20)]
    [InlineData("suction_pressure 1.92 bar;box_temperature 9 degC", nameof(Symptom.RestingTd), 9)]
    [InlineData("standing_pressure 4.7 bar;ambient_temperature 25 degC;box_temperature 30 degC", nameof(Symptom.EqualisedOverColdest), -5)]
    [InlineData("standing_pressure 4.7 bar;ambient_temperature 30 degC;box_temperature 18 degC", nameof(Symptom.EqualisedOverColdest), 2)]
    [InlineData("standing_pressure 4.7 bar;box_temperature 18 degC", nameof(Symptom.EqualisedOverColdest), 2)]
    [InlineData("suction_pressure 4.7 bar;discharge_pressure 4.7 bar;ambient_temperature 30 degC;box_temperature 25 degC", nameof(Symptom.EqualisedOverColdest), -5)]
    [InlineData("suction_pressure 1.92 bar;discharge_pressure 1.92 bar;standing_pressure 4.7 bar;box_temperature 25 degC", nameof(Symptom.EqualisedOverColdest), -5)]
    public void At_rest_the_pressures_are_set_against_each_other_and_the_coldest_place(string facts, string symptom, double value) =>
        Assert.Equal(value, Of("refrigerant R134a;compressor off;" + facts, symptom).Value, 0.15);

    [Theory]
    [InlineData("suction_pressure 1.92 bar;discharge_pressure 4.7 bar;box_temperature 25 degC")]
    [InlineData("suction_pressure 4.7 bar;discharge_pressure 1.92 bar;box_temperature 25 degC")]
    public void Two_sides_that_stand_apart_are_not_equalised(string facts) => Assert.False(Of("refrigerant R134a;compressor off;" + facts, Symptom.EqualisedOverColdest).IsKnown);

    [Theory]
    [InlineData("compressor running")]
    [InlineData("compressor short-cycling")]
    public void A_running_plants_sides_are_not_compared_as_if_at_rest(string compressor) =>
        Assert.False(Of($"refrigerant R134a;{compressor};suction_pressure 1.92 bar;discharge_pressure 4.7 bar", Symptom.RestingGap).IsKnown);
}
