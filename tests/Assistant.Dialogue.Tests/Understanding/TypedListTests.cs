using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>Everything seen at one place in one text.</summary>
public class TypedListTests
{
    private static readonly Understander Understander = new(Lexicon.Load(RepositoryFiles.ReadAll("dialogs/lexicon", "*.yaml"), RepositoryFiles.ReadAll("dialogs/walks", "*.yaml")));

    [Fact]
    public void What_stands_at_the_room_is_taken_whole()
    {
        var heard = Read("r404a cooler box 50 probe 51 set 38 diff 4 calling yes evap fans all door good prod 46 no ice sol on liq line warm txv");

        Assert.Equal(
            "box_temperature=50 box_temperature_check=51 calling_for_cooling=yes coil_ice=none differential=4 door_condition=good evaporator_fans=all application=cooler liquid_line_feel=warm metering_device=txv product_temperature=46 refrigerant=R404A setpoint=38 solenoid_energised=yes".Split(' ').Order(StringComparer.Ordinal),
            heard);
    }

    [Theory]
    [InlineData("suc 22 hd 201 ll 95 sl 45 amb 5 sg flashing")]
    public void What_stands_at_the_unit_is_taken_whole_whatever_was_asked(string text)
    {
        string[] told = ["ambient_temperature=5", "discharge_pressure=201", "liquid_line_temperature=95", "sight_glass=flashing", "suction_line_temperature_at_compressor=45", "suction_pressure=22"];

        Assert.Equal(told, Read(text));
        Assert.Equal(told, Read(text, FactCatalogue.Refrigerant));
    }

    [Fact]
    public void An_off_behind_another_thing_stops_no_fans() => Assert.Equal(["evaporator_fans=all", "solenoid_energised=no"], Read("evap fans all sol off"));

    [Theory]
    [InlineData("suc 22 hd 201 sg flashing blorp", "blorp")]
    [InlineData("purple 5 suc 22 psi", "purple 5")]
    [InlineData("suc 22 hd 201", "")]
    [InlineData("the darn thing reads 201 head", "")]
    public void What_is_left_over_is_named(string text, string left) =>
        Assert.Equal(left, string.Join(", ", Understander.Understand(text, new(null, UnitSystem.Us)).Unheard));

    private static IEnumerable<string> Read(string text, Fact? expected = null)
    {
        var heard = Understander.Understand(text, new(expected, UnitSystem.Us));
        Assert.Null(heard.Clarify);
        return heard.Readings.Select(r => FormattableString.Invariant($"{r.Fact.Name}={r.Value}")).Concat(heard.Observations.Select(o => $"{o.Fact.Name}={o.Value}")).Order(StringComparer.Ordinal);
    }
}
