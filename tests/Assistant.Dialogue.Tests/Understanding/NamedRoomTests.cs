using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>A room called by its temperature, and a valve's setting that is not the room's.</summary>
public sealed class NamedRoomTests
{
    [Theory]
    [InlineData("36 degree cooler reads 52", 52, "cooler")]
    [InlineData("the 36 degree cooler is at 52", 52, "cooler")]
    [InlineData("38 degree walk in cooler at 50", 50, "cooler")]
    [InlineData("-10 degree freezer reads 5", 5, "freezer")]
    public void The_number_a_room_is_called_by_is_no_reading_and_its_kind_is_told(string text, double reads, string kind)
    {
        foreach (var asked in new[] { null, FactCatalogue.Refrigerant, FactCatalogue.Application, FactCatalogue.BoxTemperature })
        {
            var understood = Understand(text, asked);

            Assert.Equal([("box_temperature", reads)], understood.Readings.Select(r => (r.Fact.Name, r.Value)));
            Assert.Equal([("application", kind)], understood.Observations.Select(o => (o.Fact.Name, o.Value)));
            Assert.Null(understood.Clarify);
        }
    }

    [Theory]
    [InlineData("freezer warm 18f", "box_temperature", 18, "freezer")]
    [InlineData("the freezer is at 18", "box_temperature", 18, "freezer")]
    [InlineData("cooler at 52", "box_temperature", 52, "cooler")]
    public void While_nothing_of_the_room_was_told_what_it_is_called_says_its_kind(string text, string fact, double reads, string kind)
    {
        var first = LexiconFiles.Understander.Understand(text, new(FactCatalogue.Refrigerant, UnitSystem.Us) { IsRoomUnknown = true });

        Assert.Equal([(fact, reads)], first.Readings.Select(r => (r.Fact.Name, r.Value)));
        Assert.Equal([("application", kind)], first.Observations.Select(o => (o.Fact.Name, o.Value)));
        // Later it may be the room next door.
        Assert.Empty(Understand(text, FactCatalogue.Refrigerant).Observations);
    }

    [Theory]
    [InlineData("valve setting is 90 degrees", null, "head_pressure_control_setting")]
    [InlineData("the valve is set at 180 psi", null, "head_pressure_control_setting")]
    [InlineData("valve setting is 8 degrees", "superheat", "superheat")]
    [InlineData("set at 38", null, "setpoint")]
    public void A_valve_s_setting_is_not_the_room_s(string text, string? asked, string fact) =>
        Assert.Equal([fact], Understand(text, asked is null ? null : FactCatalogue.Find(asked)).Readings.Select(r => r.Fact.Name));

    [Fact]
    public void A_setting_that_no_condenser_is_held_at_is_asked_back()
    {
        var understood = Understand("valve setting is 8 degrees", null);

        Assert.Empty(understood.Readings);
        Assert.NotNull(understood.Clarify);
    }

    private static Understood Understand(string text, Fact? asked) => LexiconFiles.Understander.Understand(text, new(asked, UnitSystem.Us));
}
