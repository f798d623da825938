using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>The plain "number unit" that a record or a case file holds.</summary>
public sealed class PlainAnswerTests
{
    [Theory]
    [InlineData("suction_pressure", "14 psig", 14, "psig")]
    [InlineData("suction_pressure", "2.35 barg", 2.35, "bar")]
    [InlineData("discharge_pressure", "1250 kPa", 1250, "kPa")]
    [InlineData("box_temperature", "-10.5 deg F", -10.5, "degF")]
    [InlineData("box_temperature", "-18.5C", -18.5, "degC")]
    [InlineData("design_condenser_split", "11.5 K", 11.5, "K")]
    [InlineData("differential", "2 F", 2, "degF")]
    [InlineData("box_temperature", "about..38F", 38, "degF")]
    [InlineData("product_temperature", "..2F", 2, "degF")]
    [InlineData("differential", ".5 F", 0.5, "degF")]
    [InlineData("full_charge", "11 lb 12 oz", 11.75, "lb")]
    [InlineData("compressor_current", "10.5 A", 10.5, "A")]
    [InlineData("altitude", "5400 ft", 5400, "ft")]
    [InlineData("head_pressure_control_setting", "167psig", 167, "psig")]
    [InlineData("head_pressure_control_setting", "80F", 80, "degF")]
    public void A_number_with_its_unit_is_a_reading_of_the_fact_asked(string fact, string text, double value, string unit)
    {
        var understood = LexiconFiles.Understander.Understand(text, new(FactCatalogue.Find(fact), UnitSystem.Us));

        var reading = Assert.Single(understood.Readings);
        Assert.Equal(Intent.Answer, understood.Intent);
        Assert.Equal(value, reading.Value, 9);
        Assert.Equal(unit, reading.Unit.Symbol);
    }

    [Theory]
    [InlineData("refrigerant", "R-404A", "R404A")]
    [InlineData("refrigerant", "r22", "R22")]
    [InlineData("coil_ice", "distributor-end", "distributor-end")]
    [InlineData("compressor", "short-cycling", "short-cycling")]
    [InlineData("sight_glass", "flashing", "flashing")]
    [InlineData("head_pressure_control", "fan-cycling", "fan-cycling")]
    [InlineData("defrost_active", "no", "no")]
    public void A_choice_is_taken_in_its_own_spelling(string fact, string text, string value)
    {
        var understood = LexiconFiles.Understander.Understand(text, new(FactCatalogue.Find(fact), UnitSystem.Us));

        Assert.Equal(value, Assert.Single(understood.Observations).Value);
    }

    [Theory]
    [InlineData("the room is coming down", "yes")]
    [InlineData("box is pulling down", "yes")]
    [InlineData("the room isnt coming down", "no")]
    [InlineData("the cooler is not pulling down", "no")]
    public void A_room_on_its_way_down_is_said_without_being_asked(string text, string value)
    {
        var observation = Assert.Single(LexiconFiles.Understander.Understand(text, new(null, UnitSystem.Us)).Observations);

        Assert.Equal((FactCatalogue.PullingDown, value), (observation.Fact, observation.Value));
    }
}
