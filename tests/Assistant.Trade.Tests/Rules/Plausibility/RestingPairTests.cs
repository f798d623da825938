using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Plausibility;

namespace Assistant.Trade.Tests.Rules.Plausibility;

/// <summary>What holds between two readings of a plant at rest, and what only of one that runs: first principles.</summary>
public class RestingPairTests
{
    // Two sides equal at rest; running, nothing lifts heat from 90 psig to 91.
    [Theory]
    [InlineData("off", false)]
    [InlineData("running", true)]
    public void Equal_pressures_are_questioned_of_a_compressor_that_runs(string compressor, bool questioned) =>
        Assert.Equal(questioned, Rejected("refrigerant R404A", $"compressor {compressor}", "suction_pressure 90 psig", "discharge_pressure 91 psig").Length > 0);

    // A resting coil takes up the temperature of its room and more.
    [Theory]
    [InlineData("off", false)]
    [InlineData("running", true)]
    public void A_coil_warmer_than_its_room_is_questioned_of_a_compressor_that_runs(string compressor, bool questioned) =>
        Assert.Equal(questioned, Rejected("refrigerant R404A", $"compressor {compressor}", "box_temperature_check 38 degF", "saturated_suction_temperature 70 degF", "suction_pressure 140 psig").Length > 0);

    [Theory]
    [InlineData("off")]
    [InlineData("running")]
    public void Two_thermometers_in_one_room_do_not_stand_sixty_degrees_apart(string compressor) =>
        Assert.NotEmpty(Rejected($"compressor {compressor}", "box_temperature 38 degF", "box_temperature_check 98 degF"));

    // Resting and levelled the high side is at the air's temperature: 400 psig of R404A is that of 141 degF.
    [Theory]
    [InlineData("off")]
    [InlineData("running")]
    public void A_high_side_at_rest_does_not_stand_seventy_degrees_over_the_air(string compressor) =>
        Assert.NotEmpty(Rejected("refrigerant R404A", $"compressor {compressor}", "high_side_standing_pressure 400 psig", "ambient_temperature 68 degF"));

    [Fact]
    public void What_can_not_be_is_left_out_of_what_is_judged()
    {
        var left = Screening.Of(FactsOf.Visit("ambient_temperature 900 degF", "box_temperature 38 degF"), out var rejected);

        Assert.Equal(FactCatalogue.AmbientTemperature, Assert.Single(rejected).Value.Fact);
        Assert.False(left.Has(FactCatalogue.AmbientTemperature));
        Assert.True(left.Has(FactCatalogue.BoxTemperature));
    }

    private static System.Collections.Immutable.ImmutableArray<Rejection> Rejected(params string[] facts)
    {
        Screening.Of(FactsOf.Visit(facts), out var rejected);
        return rejected;
    }
}
