using Assistant.Dialogue.Questions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>Vacuum, nitrogen hold, standing pressure, pull-down.</summary>
public sealed class TestQuestionTests
{
    private static readonly Call Hold = new Call("standing-test").Knowing(FactCatalogue.TestPressure, 150, UnitOfMeasure.Psig).Knowing(FactCatalogue.TestGasTemperature, 70, UnitOfMeasure.Fahrenheit);

    // 150 psig at 70 degF is 140.7 psig at 40 degF with no leak.
    [Theory]
    [InlineData(140.2, "It holds: 141 psig is what a tight system shows now, and you read 140 psig.")]
    [InlineData(135, "It leaks: a tight system would show 141 psig now, and you read 135 psig.")]
    [InlineData(148, "148 psig is more than the temperatures explain (141 psig)")]
    public void A_nitrogen_hold_is_judged_with_its_temperatures(double read, string said) =>
        Assert.StartsWith(said, Hold.With(read, UnitOfMeasure.Psig).With(40, UnitOfMeasure.Fahrenheit).Said(), StringComparison.Ordinal);

    // Ten degrees colder than 70 degF: 150 psig becomes 146.9.
    [Fact]
    public void Ten_degrees_colder_is_a_change_from_what_was_set() =>
        Assert.StartsWith("It holds: 147 psig", Hold.With(147, UnitOfMeasure.Psig).With(10, UnitOfMeasure.FahrenheitDifference).Said(), StringComparison.Ordinal);

    [Fact]
    public void A_hold_that_was_read_twice_needs_no_numbers()
    {
        var call = new Call("standing-test")
        {
            Course = VisitCourse.None with
            {
                TestPressureSet = new Reading(FactCatalogue.TestPressure, 150, UnitOfMeasure.Psig),
                TestGasSet = new Reading(FactCatalogue.TestGasTemperature, 70, UnitOfMeasure.Fahrenheit),
            },
        };
        Assert.StartsWith(
            "It leaks: a tight system would show 141 psig",
            call.Knowing(FactCatalogue.TestPressure, 130, UnitOfMeasure.Psig).Knowing(FactCatalogue.TestGasTemperature, 40, UnitOfMeasure.Fahrenheit).Said(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_hold_asks_for_what_was_set_and_for_what_is_read()
    {
        Assert.Contains("set at", new Call("standing-test").With(148, UnitOfMeasure.Psig).Answered().Needs!.Full, StringComparison.Ordinal);
        Assert.Contains("read now", Hold.Answered().Needs!.Full, StringComparison.Ordinal);
        Assert.NotNull(Hold.With(148, UnitOfMeasure.Psig).Answered().Needs);
    }

    // R-134a at 68 degF: 571.7 kPa absolute, 68.2 psig.
    [Theory]
    [InlineData(68, "68 psig fits")]
    [InlineData(60, "60 psig is below the 68 psig of its liquid")]
    [InlineData(80, "80 psig is above the 68 psig of its liquid: noncondensable gas")]
    public void A_system_at_rest_is_held_against_its_refrigerant(double read, string said) =>
        Assert.StartsWith(
            said,
            new Call("standing-test").Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.StandingPressure, read, UnitOfMeasure.Psig).Knowing(FactCatalogue.AmbientTemperature, 68, UnitOfMeasure.Fahrenheit).Said(),
            StringComparison.Ordinal);

    [Theory]
    [InlineData(800, "800 micron is not deep enough: pump on below 500 micron.")]
    [InlineData(450, "450 micron is deep enough to test, not yet to break: shut the pump off and watch 15 min.")]
    public void One_vacuum_reading_is_held_against_the_target(double micron, string said) =>
        Assert.StartsWith(said, new Call("vacuum-verdict").With(micron, UnitOfMeasure.Micron).Said(), StringComparison.Ordinal);

    [Theory]
    [InlineData(410, 415, 418, "418 micron and level: dry and tight.")]
    [InlineData(2000, 2600, 2800, "2800 micron and levelling off too high: there is moisture in it.")]
    [InlineData(700, 950, 1250, "1250 micron and still climbing: it leaks.")]
    public void A_course_after_isolation_is_judged_as_a_whole(double second, double third, double last, string said)
    {
        var course = new[] { (0.0, 400.0), (5, second), (10, third), (16, last) }
            .Select(p => new VacuumReading(Duration.FromMinutes(p.Item1), new(p.Item2 * 0.133322368)));
        var call = new Call("vacuum-verdict") { Course = VisitCourse.None with { Vacuum = [.. course] } }.Knowing(FactCatalogue.VacuumLevel, last, UnitOfMeasure.Micron);
        Assert.StartsWith(said, call.Said(), StringComparison.Ordinal);
    }

    // Over ice at 14 degF water stands at 1950 micron.
    [Fact]
    public void In_the_cold_ice_is_warned_of()
    {
        var because = new Call("vacuum-verdict").With(1900, UnitOfMeasure.Micron).Knowing(FactCatalogue.AmbientTemperature, 14, UnitOfMeasure.Fahrenheit).Because();
        Assert.Matches(@"about where water stands at 14 °F \(19[45]\d micron\)", because);
        Assert.Contains("the pump will not dry it", because, StringComparison.Ordinal);
        Assert.DoesNotContain("will not dry it", new Call("vacuum-verdict").With(1900, UnitOfMeasure.Micron).Knowing(FactCatalogue.AmbientTemperature, 60, UnitOfMeasure.Fahrenheit).Because(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_vacuum_one_is_asked_for() => Assert.NotNull(new Call("vacuum-verdict").Answered().Needs);

    // 2 + 18 exp(-t): 0.697 h from the last reading to 4 degC.
    [Fact]
    public void A_pull_down_is_timed_from_its_course()
    {
        var call = new Call("pull-down")
        {
            Units = Trade.Quantities.UnitSystem.Metric,
            Course = VisitCourse.None with { Box = [Box(0, 20), Box(0.5, 12.9176), Box(1, 8.6218), Box(1.5, 6.0163)] },
        };
        Assert.Equal("About 42 min more to 4 °C.", call.Knowing(FactCatalogue.Setpoint, 4, UnitOfMeasure.Celsius).Said());
        Assert.StartsWith("It will not get there: as it goes it levels off at 2 °C", call.Knowing(FactCatalogue.Setpoint, 1, UnitOfMeasure.Celsius).Said(), StringComparison.Ordinal);
        Assert.StartsWith("It is there", call.Knowing(FactCatalogue.Setpoint, 7, UnitOfMeasure.Celsius).Said(), StringComparison.Ordinal);
        Assert.Contains("three times", new Call("pull-down").Knowing(FactCatalogue.Setpoint, 4, UnitOfMeasure.Celsius).Answered().Needs!.Full, StringComparison.Ordinal);
    }

    private static BoxReading Box(double hours, double degrees) => new(Duration.FromHours(hours), new(degrees));
}
