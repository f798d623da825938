using Assistant.Trade.Rules.Derivation;
using static Assistant.Trade.Tests.Rules.Derivation.SymptomReadings;

namespace Assistant.Trade.Tests.Rules.Derivation;

/// <summary>
/// What the discharge line tells of the compression, worked by hand from R134a's handbook tables (from memory): from 2.93 bar absolute and 10 degC the
/// isentropic end at 10.17 bar is 54 degC, 27 kJ/kg on; at 70 degC 44 kJ/kg were taken.
/// </summary>
public class CompressorWorkTests
{
    private const string Plant = "refrigerant R134a;compressor running;suction_pressure 1.915 bar;discharge_pressure 9.15 bar;suction_line_temperature_at_compressor 10 degC;";

    [Fact]
    public void The_least_work_is_set_against_what_the_two_lines_tell()
    {
        var efficiency = CompressorWork.Efficiency(State(Plant + "application cooler;discharge_line_temperature 70 degC"));

        Assert.Equal(0.61, efficiency.Value, 0.03);
        Assert.Equal(0.02, efficiency.Error);
    }

    [Theory]
    [InlineData("application cooler;discharge_line_temperature 99 degC", true)]
    [InlineData("application freezer;discharge_line_temperature 97 degC", true)]
    [InlineData("application freezer;discharge_line_temperature 99 degC", false)]
    public void A_hot_freezer_may_be_cooled_by_liquid_and_tells_nothing(string facts, bool told) => Assert.Equal(told, CompressorWork.Efficiency(State(Plant + facts)).IsKnown);

    [Theory]
    [InlineData("discharge_line_temperature 70 degC;suction_line_temperature_at_compressor 10 degC;discharge_pressure 9.15 bar")]
    [InlineData("discharge_line_temperature 70 degC;suction_line_temperature_at_compressor 10 degC;suction_pressure 1.915 bar")]
    [InlineData("discharge_line_temperature 70 degC;suction_pressure 1.915 bar;discharge_pressure 9.15 bar")]
    [InlineData("suction_line_temperature_at_compressor 10 degC;suction_pressure 1.915 bar;discharge_pressure 9.15 bar")]
    [InlineData("discharge_line_temperature 70 degC;suction_line_temperature_at_compressor -5 degC;suction_pressure 1.915 bar;discharge_pressure 9.15 bar")]
    [InlineData("discharge_line_temperature 35 degC;suction_line_temperature_at_compressor 10 degC;suction_pressure 1.915 bar;discharge_pressure 9.15 bar")]
    [InlineData("discharge_line_temperature 60 degC;suction_line_temperature_at_compressor 50 degC;suction_pressure 9.15 bar;discharge_pressure 1.915 bar")]
    public void Without_its_readings_or_off_the_vapour_table_nothing_is_told(string facts) =>
        Assert.False(CompressorWork.Efficiency(State("refrigerant R134a;application cooler;compressor running;" + facts)).IsKnown);
}
