using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>R-134a at 10 psig has its dew point at 6.6 degF (0.170 MPa absolute: -14.1 degC, ASHRAE Handbook - Fundamentals, from memory).</summary>
public sealed class SuperheatQuestionTests
{
    private static readonly Call R134a = new Call("superheat").Knowing(FactCatalogue.Refrigerant, "R134a");

    [Fact]
    public void The_question_s_own_numbers_go_first() =>
        Assert.Matches(
            "^Superheat (8|8.[0-9]) °F.$",
            R134a.Knowing(FactCatalogue.SuctionPressure, 40, UnitOfMeasure.Psig).With(10, UnitOfMeasure.Psig).With(15, UnitOfMeasure.Fahrenheit).Said());

    [Fact]
    public void At_the_bulb_with_the_unit_s_gauge_it_is_approximate()
    {
        var call = R134a.Knowing(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 15, UnitOfMeasure.Fahrenheit);
        Assert.Matches("^Superheat 8.[0-9] °F.$", call.Said());
        Assert.Contains("the real superheat is lower", call.Because(), StringComparison.Ordinal);
        Assert.Contains("Line 15 °F, dew point 7 °F.", call.Because(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_at_the_evaporator_goes_before_the_unit_s()
    {
        var call = R134a.Knowing(FactCatalogue.SuctionPressure, 5, UnitOfMeasure.Psig)
            .Knowing(FactCatalogue.SuctionPressureAtEvaporator, 10, UnitOfMeasure.Psig)
            .Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 15, UnitOfMeasure.Fahrenheit);
        Assert.Matches("^Superheat 8.[0-9] °F.$", call.Said());
        Assert.DoesNotContain("real superheat", call.Because(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12, "low")]
    [InlineData(17, "right")]
    [InlineData(30, "high")]
    public void A_cooler_wants_8_to_12_degF(double line, string standing) =>
        Assert.Contains(
            ": " + standing + ". This evaporator wants 8 °F to 12 °F",
            R134a.Knowing(FactCatalogue.Application, "cooler").Knowing(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, line, UnitOfMeasure.Fahrenheit).Said(),
            StringComparison.Ordinal);

    [Theory]
    [InlineData(20, "low")]
    [InlineData(40, "enough")]
    public void At_the_compressor_it_wants_20_degF(double line, string standing) =>
        Assert.Contains(
            "at the compressor: " + standing,
            R134a.Knowing(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig).Knowing(FactCatalogue.SuctionLineTemperatureAtCompressor, line, UnitOfMeasure.Fahrenheit).Said(),
            StringComparison.Ordinal);

    [Fact]
    public void A_suction_line_named_in_the_question_is_at_the_compressor_whatever_the_bulb_reads() =>
        Assert.Matches(
            "^Superheat 33 °F at the compressor: enough",
            R134a.Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 15, UnitOfMeasure.Fahrenheit).With(10, UnitOfMeasure.Psig, FactCatalogue.SuctionPressure)
                .With(40, UnitOfMeasure.Fahrenheit, FactCatalogue.SuctionLineTemperatureAtCompressor).Said());

    [Fact]
    public void Below_zero_the_readings_are_questioned_and_nothing_is_judged()
    {
        var said = R134a.Knowing(FactCatalogue.Application, "cooler").Knowing(FactCatalogue.SuctionPressure, 30, UnitOfMeasure.Psig).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 20, UnitOfMeasure.Fahrenheit).Said();
        Assert.Contains("cannot be below zero", said, StringComparison.Ordinal);
        Assert.DoesNotContain("wants", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Ice_and_a_warm_room_are_said_with_it()
    {
        var because = R134a.Knowing(FactCatalogue.Application, "cooler").Knowing(FactCatalogue.CoilIce, "blocked")
            .Knowing(FactCatalogue.BoxTemperature, 50, UnitOfMeasure.Fahrenheit).Knowing(FactCatalogue.Setpoint, 36, UnitOfMeasure.Fahrenheit)
            .Knowing(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 17, UnitOfMeasure.Fahrenheit).Because();
        Assert.Contains("ice on the coil", because, StringComparison.Ordinal);
        Assert.Contains("still 14 °F over its setpoint", because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_saturation_temperature_read_off_the_gauge_needs_no_refrigerant() =>
        Assert.Equal(
            "Superheat 9 °F.",
            new Call("superheat").Knowing(FactCatalogue.SaturatedSuctionTemperature, 20, UnitOfMeasure.Fahrenheit).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 29, UnitOfMeasure.Fahrenheit).Said());

    [Fact]
    public void A_superheat_that_was_said_is_answered_back() =>
        Assert.Equal("Superheat 9 °F.", new Call("superheat").Knowing(FactCatalogue.Superheat, 9, UnitOfMeasure.FahrenheitDifference).Said());

    [Fact]
    public void A_statement_in_the_same_breath_counts() =>
        Assert.Matches(
            "^Superheat 8.[0-9] °F.$",
            (R134a with { Statements = [new Reading(FactCatalogue.SuctionPressure, 10, UnitOfMeasure.Psig)] }).Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 15, UnitOfMeasure.Fahrenheit).Said());

    [Fact]
    public void What_is_missing_is_asked_for_one_at_a_time()
    {
        Assert.Equal(Need(FactCatalogue.SuctionLineTemperatureAtBulb), R134a.Answered().Needs?.Full);
        Assert.Equal(Need(FactCatalogue.SuctionPressure), R134a.Knowing(FactCatalogue.SuctionLineTemperatureAtBulb, 15, UnitOfMeasure.Fahrenheit).Answered().Needs?.Full);
    }

    private static string Need(Fact fact) => Call.Phrases.Say("answer.needs", UnitSystem.Us, ("fact", fact.Name)).Full;
}
