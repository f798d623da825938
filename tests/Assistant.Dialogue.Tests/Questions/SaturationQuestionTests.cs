using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

public sealed class SaturationQuestionTests
{
    // R-448A: 181.5 psig dew and 210.9 psig bubble at 90 degF, the trade's own figures.
    [Fact]
    public void A_blend_s_pressure_has_a_dew_and_a_bubble_temperature()
    {
        var answer = new Call("saturation") { Refrigerant = "R448A" }.With(181.5, UnitOfMeasure.Psig).Answered();
        Assert.Matches("^R448A at 18[12] psig: 90 °F dew, (79|80|81) °F bubble.$", answer.Say.Full);
        Assert.Contains(answer.Because, p => p.Full.Contains("subcooling by bubble", StringComparison.Ordinal));
        Assert.Null(answer.Needs);
    }

    [Fact]
    public void A_blend_s_temperature_has_a_dew_and_a_bubble_pressure() =>
        Assert.Matches("^R448A at 90 °F: 18[12] psig dew, 211 psig bubble.$", new Call("saturation") { Refrigerant = "R448A" }.With(90, UnitOfMeasure.Fahrenheit).Said());

    // R-134a at 292.8 kPa absolute, 191.5 kPa gauge: 0 degC. ASHRAE Handbook - Fundamentals, from memory.
    [Fact]
    public void A_pure_fluid_has_one_temperature_in_the_site_s_units() =>
        Assert.Equal("R134a at 1.91 bar: 0 °C saturated.", new Call("saturation") { Refrigerant = "R134a", Units = UnitSystem.Metric }.With(191.48, UnitOfMeasure.Kilopascal).Said());

    // At 1600 m the air is 83.5 kPa: the same gauge stands at 275 kPa absolute, -1.7 degC.
    [Fact]
    public void The_site_s_altitude_counts()
    {
        var call = new Call("saturation") { Refrigerant = "R134a", Units = UnitSystem.Metric }.With(191.48, UnitOfMeasure.Kilopascal).Knowing(FactCatalogue.Altitude, 1600, UnitOfMeasure.Meter);
        Assert.Matches("^R134a at 1.91 bar: -1.[678] °C saturated.$", call.Said());
        Assert.Contains("1600 m above the sea", call.Because(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_of_the_visit_stands_in_where_the_question_has_no_number() =>
        Assert.Equal(
            "R134a at 10 psig: 7 °F saturated.",
            new Call("saturation").Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig).Said());

    [Fact]
    public void A_bare_number_with_its_fact_is_in_the_site_s_unit() =>
        Assert.Equal("R134a at 10 psig: 7 °F saturated.", new Call("saturation") { Refrigerant = "R134a" }.With(10, null, FactCatalogue.SuctionPressure).Said());

    [Fact]
    public void Whatever_the_pressure_in_the_question_was_named_it_goes_first() =>
        Assert.Equal(
            "R134a at 10 psig: 7 °F saturated.",
            new Call("saturation") { Refrigerant = "R134a" }.Knowing(FactCatalogue.SuctionPressure, 30, UnitOfMeasure.Psig).With(10, UnitOfMeasure.Psig, FactCatalogue.StandingPressure).Said());

    [Fact]
    public void Without_a_refrigerant_or_a_pressure_one_line_asks_for_it()
    {
        Assert.Equal(Need(FactCatalogue.Refrigerant), new Call("saturation").With(10, UnitOfMeasure.Psig).Answered().Needs?.Full);
        Assert.Equal(Need(FactCatalogue.SuctionPressure), new Call("saturation") { Refrigerant = "R134a" }.Answered().Needs?.Full);
        Assert.True(new Call("saturation").Answered().Say.IsEmpty);
    }

    [Fact]
    public void A_refrigerant_without_a_table_is_named() =>
        Assert.StartsWith("I have no table for R502", new Call("saturation") { Refrigerant = "R502" }.With(10, UnitOfMeasure.Psig).Said(), StringComparison.Ordinal);

    [Fact]
    public void Beyond_the_table_its_range_is_said() =>
        Assert.Contains("from -56 °C to 29 °C", new Call("saturation") { Refrigerant = "R744", Units = UnitSystem.Metric }.With(40, UnitOfMeasure.Celsius).Said(), StringComparison.Ordinal);

    private static string Need(Fact fact) => Call.Phrases.Say("answer.needs", UnitSystem.Us, ("fact", fact.Name)).Full;
}
