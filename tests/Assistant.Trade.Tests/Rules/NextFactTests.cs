using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>What a foreman would have read next: what separates the leading faults, without a walk where it can be helped.</summary>
public class NextFactTests
{
    [Theory]
    [InlineData("", "calling_for_cooling")]
    [InlineData("calling_for_cooling no", "setpoint")]
    [InlineData("refrigerant R404A;compressor off;calling_for_cooling yes", "solenoid_energised")]
    [InlineData("refrigerant R404A;compressor running;sight_glass flashing;calling_for_cooling yes", "drier_inlet_temperature")]
    [InlineData("refrigerant R404A;compressor running;sight_glass flashing;calling_for_cooling yes;drier_inlet_temperature 90 degF", "drier_outlet_temperature")]
    [InlineData("refrigerant R404A;application cooler;superheat 25 degF;compressor running", "sight_glass")]
    [InlineData("refrigerant R404A;application cooler;compressor running;ambient_temperature 75 degF;discharge_pressure 300 psig", "liquid_line_temperature")]
    [InlineData("refrigerant R404A;application cooler;compressor running;ambient_temperature 75 degF;discharge_pressure 300 psig;liquid_line_temperature 95 degF;sight_glass clear;condenser_coil clean;condenser_fans all", "high_side_standing_pressure")]
    // A sound compressor's work ends where a weak one's begins: which side it lies on still parts the two.
    [InlineData("refrigerant R404A;application cooler;compressor running;calling_for_cooling yes;box_temperature 39 degF;setpoint 38 degF;design_condenser_split 20 degF;solenoid_energised yes;evaporator_fans all;coil_ice none;ambient_temperature 90 degF;discharge_pressure 253 psig;suction_pressure 68 psig;liquid_line_temperature 98 degF;suction_line_temperature_at_compressor 48 degF;pulling_down yes;sight_glass clear;condenser_coil clean;condenser_fans all", "discharge_line_temperature")]
    public void It_is_what_tells_the_leading_faults_apart(string facts, string next) =>
        Assert.Equal(next, Assessor.Assess(Visit(facts)).Next?.Name);

    [Fact]
    public void In_the_room_the_room_is_read_before_the_walk()
    {
        var known = Visit("refrigerant R404A;box_temperature 47 degF;setpoint 36 degF;calling_for_cooling yes");

        Assert.Equal(Place.Room, Assessor.Assess(known).Next!.Place);
    }

    [Fact]
    public void At_the_unit_what_is_read_there_comes_first()
    {
        var known = Visit("refrigerant R404A;application cooler;compressor running;calling_for_cooling yes;ambient_temperature 80 degF;discharge_pressure 235 psig");

        Assert.Equal(Place.Unit, Assessor.Assess(known).Next!.Place);
    }

    [Fact]
    public void Half_of_a_pair_is_not_asked_where_the_other_half_can_not_be_had()
    {
        var known = Visit("refrigerant R404A;compressor running;sight_glass flashing;calling_for_cooling yes");

        Assert.NotEqual(FactCatalogue.DrierInletTemperature, Assessor.Assess(known, new HashSet<Fact> { FactCatalogue.DrierOutletTemperature }).Next);
        Assert.NotEqual(FactCatalogue.DrierOutletTemperature, Assessor.Assess(known, new HashSet<Fact> { FactCatalogue.DrierInletTemperature }).Next);
    }

    [Fact]
    public void What_needs_one_reading_is_asked_before_what_needs_three()
    {
        // A high head with a known refrigerant: the liquid temperature alone parts charge from air, three more readings would say as much of the coil.
        var known = Visit("refrigerant R404A;application cooler;compressor running;ambient_temperature 75 degF;discharge_pressure 300 psig;box_temperature 38 degF");

        Assert.Equal(FactCatalogue.LiquidLineTemperature, Assessor.Assess(known).Next);
    }

    [Fact]
    public void When_everything_is_skipped_nothing_is_asked() =>
        Assert.Null(Assessor.Assess(Visit("refrigerant R404A;compressor running"), FactCatalogue.All.ToHashSet()).Next);

    [Fact]
    public void The_same_facts_ask_the_same_next()
    {
        var known = Visit("refrigerant R404A;application cooler;superheat 25 degF;compressor running");

        Assert.Equal(Assessor.Assess(known).Next, Assessor.Assess(known).Next);
    }

    [Theory]
    [InlineData("sight_glass flashing;compressor running")]
    [InlineData("refrigerant R22;application cooler;compressor running;suction_pressure 40 psig;box_temperature 38 degF")]
    [InlineData("refrigerant R404A;evaporator_fans some;compressor running")]
    public void Following_it_to_the_end_asks_nothing_twice_and_comes_to_an_end(string facts)
    {
        var (known, asked) = (Visit(facts), new HashSet<Fact>());
        while (Assessor.Assess(known, asked).Next is { } next)
        {
            Assert.False(known.Has(next));
            Assert.True(asked.Add(next));
        }

        Assert.InRange(asked.Count, 1, 60);
    }

    private static FactSet Visit(string facts) => FactsOf.Visit(facts.Split(';', StringSplitOptions.RemoveEmptyEntries));
}
