using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>
/// The low side's readings against what a sound plant would show, worked by hand. R134a: 1.92 bar is 0 degC and 1.80 bar -1.1 degC by the gauge
/// (handbook saturation table, from memory); a psi there is 0.65 K, a degF 0.56.
/// </summary>
public class LowSideReadingTests
{
    private const string Cooler = "refrigerant R134a;application cooler;compressor running;";

    [Fact]
    public void At_the_coils_own_gauge_superheat_is_line_less_saturation_over_the_usual_ten_degF()
    {
        var excess = Of(Cooler + "suction_pressure_at_evaporator 1.92 bar;suction_line_temperature_at_bulb 8 degC", Symptom.SuperheatExcess);

        Assert.Equal(2.44, excess.Value, 0.1);
        Assert.Equal(0.86, excess.Error, 0.06);
    }

    [Fact]
    public void From_the_far_gauge_the_lines_drop_of_two_degF_is_taken_off_and_its_doubt_added()
    {
        var excess = Of(Cooler + "suction_pressure 1.92 bar;suction_line_temperature_at_bulb 8 degC", Symptom.SuperheatExcess);

        Assert.Equal(1.33, excess.Value, 0.1);
        Assert.Equal(0.90, excess.Error, 0.06);
    }

    [Fact]
    public void The_coils_own_gauge_comes_before_the_far_one() =>
        Assert.Equal(2.44, Of(Cooler + "suction_pressure 1.80 bar;suction_pressure_at_evaporator 1.92 bar;suction_line_temperature_at_bulb 8 degC", Symptom.SuperheatExcess).Value, 0.1);

    [Theory]
    [InlineData("application freezer", 4.11)]
    [InlineData("setpoint -9 degC", 4.11)]
    [InlineData("setpoint -8 degC", 2.44)]
    [InlineData("application cooler;setpoint -9 degC", 2.44)]
    public void A_freezers_usual_superheat_is_seven_degF(string kind, double excess) =>
        Assert.Equal(excess, Of($"refrigerant R134a;compressor running;{kind};suction_pressure_at_evaporator 1.92 bar;suction_line_temperature_at_bulb 8 degC", Symptom.SuperheatExcess).Value, 0.1);

    [Fact]
    public void A_superheat_said_outright_counts_with_two_errors()
    {
        var excess = Of(Cooler + "superheat 8 K", Symptom.SuperheatExcess);

        Assert.Equal(2.44, excess.Value, 0.01);
        Assert.Equal(1.11, excess.Error, 0.01);
    }

    [Fact]
    public void At_the_compressor_the_vapour_is_set_against_the_units_gauge() =>
        Assert.Equal(12, Of(Cooler + "suction_pressure 1.92 bar;suction_line_temperature_at_compressor 12 degC", Symptom.CompressorSuperheat).Value, 0.1);

    // Set so that the coil has its design suction: then the compressor takes the design flow and the design TD is due.
    [Theory]
    [InlineData("box_temperature 8 degC;suction_pressure_at_evaporator 1.92 bar", 1)]
    [InlineData("box_temperature 12 degC;suction_pressure_at_evaporator 1.92 bar", 1.5)]
    [InlineData("box_temperature 12 degC;suction_pressure 1.80 bar", 1.5)]
    [InlineData("box_temperature 30 degC;evaporator_air_in 4 degC;suction_pressure_at_evaporator 1.92 bar", 0.5)]
    [InlineData("box_temperature 20 degC;box_temperature_check 12 degC;suction_pressure_at_evaporator 1.92 bar", 1.5)]
    [InlineData("box_temperature 12 degC;box_temperature_check 11 degC;suction_pressure_at_evaporator 1.92 bar", 1.5)]
    public void Td_is_air_on_less_coil_over_the_design(string readings, double share) =>
        Assert.Equal(share, Of(Cooler + "setpoint 8 degC;design_evaporator_td 8 K;" + readings, Symptom.TdShare).Value, 0.03);

    [Fact]
    public void A_td_of_the_plate_leaves_the_instruments_in_doubt_and_the_default_a_quarter_more()
    {
        var plate = Of(Cooler + "setpoint 8 degC;design_evaporator_td 8 K;box_temperature 12 degC;suction_pressure_at_evaporator 1.92 bar", Symptom.TdShare);
        var usual = Of(Cooler + "setpoint 6.667 degC;box_temperature 10 degC;suction_pressure_at_evaporator 1.92 bar", Symptom.TdShare);

        Assert.Equal(0.107, plate.Error, 0.01);
        Assert.Equal(1.5, usual.Value, 0.03);
        Assert.Equal(0.405, usual.Error, 0.02);
    }

    [Fact]
    public void The_airs_fall_is_set_against_the_td()
    {
        var share = Of(Cooler + "evaporator_air_in 12 degC;evaporator_air_out 6 degC;suction_pressure_at_evaporator 1.92 bar", Symptom.AirShare);

        // Fall 6 K, 0.79 of error; TD 12 K, 0.86 of error.
        Assert.Equal(0.5, share.Value, 0.01);
        Assert.Equal(0.075, share.Error, 0.006);
    }

    [Theory]
    [InlineData("evaporator_air_in 0.8 degC;evaporator_air_out 0.4 degC", false)]
    [InlineData("evaporator_air_in 1.3 degC;evaporator_air_out 0.4 degC", true)]
    public void Over_a_td_of_a_degree_or_less_the_airs_fall_tells_nothing(string air, bool told) =>
        Assert.Equal(told, Of(Cooler + air + ";suction_pressure_at_evaporator 1.92 bar", Symptom.AirShare).IsKnown);

    [Theory]
    [InlineData(nameof(Symptom.SuperheatExcess))]
    [InlineData(nameof(Symptom.TdShare))]
    [InlineData(nameof(Symptom.CompressorSuperheat))]
    [InlineData(nameof(Symptom.HeadExcess))]
    [InlineData(nameof(Symptom.Subcooling))]
    public void At_rest_nothing_of_a_running_plant_is_read(string symptom) =>
        Assert.False(Of("refrigerant R134a;compressor off;suction_pressure 1.92 bar;suction_line_temperature_at_bulb 8 degC;suction_line_temperature_at_compressor 9 degC;box_temperature 8 degC;discharge_pressure 9.15 bar;liquid_line_temperature 35 degC;ambient_temperature 20 degC", symptom).IsKnown);
}
