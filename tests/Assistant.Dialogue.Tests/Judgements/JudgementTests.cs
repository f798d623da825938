using Assistant.Dialogue.Judgements;
using Assistant.Dialogue.Tests.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Judgements;

public sealed class JudgementTests
{
    private static readonly DateTimeOffset At = new(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2));

    // Limits are common practice: below 500 micron, isolated 15 minutes, below 1000 and levelled.
    [Theory]
    [InlineData("too-short", "0:420")]
    [InlineData("too-short", "0:420 5:430 10:440")]
    [InlineData("tight", "0:420 8:430 16:440")]
    [InlineData("moisture", "0:420 8:1300 16:1450")]
    [InlineData("leak", "0:420 8:900 16:1400")]
    [InlineData("not-deep-enough", "0:800 8:805 16:810")]
    public void The_rise_of_an_isolated_vacuum_tells_tight_moisture_or_a_leak(string outcome, string course) =>
        Assert.Equal(outcome, Judge("vacuum-decay", [Taken("ambient_temperature", 70, "degF", 0), .. Course("vacuum", "micron", course)]).Outcome);

    // Ice at 0 degF has 957 micron (Murphy and Koop 2005): a system full of ice stays under the 1000 micron of the test.
    [Theory]
    [InlineData(0, true)]
    [InlineData(14, false)]
    public void In_the_cold_the_test_says_that_ice_can_hide(double fahrenheit, bool warned)
    {
        var judged = Judge("vacuum-decay", [Taken("ambient_temperature", fahrenheit, "degF", 0), .. Course("vacuum", "micron", "0:420 8:430 16:440")]);

        Assert.Equal(warned, judged.Because.Any(r => r.Key == "judged.vacuum.ice"));
    }

    [Fact]
    public void The_time_said_beside_a_reading_counts_before_the_clock()
    {
        var judged = Judge("vacuum-decay", [Taken("vacuum", 420, "micron", 0), Taken("vacuum", 430, "micron", 1), Taken("elapsed_time", 8, "min", 1), Taken("vacuum", 440, "micron", 2), Taken("elapsed_time", 20, "min", 2)]);

        Assert.Equal("tight", judged.Outcome);
    }

    // Over water of 32 degF stand 4580 micron (Murphy and Koop 2005): a pump that hangs there boils water.
    [Theory]
    [InlineData("deep-enough", "0:2000 20:480")]
    [InlineData("not-yet", "0:9000 20:4600")]
    [InlineData("on-water", "0:4700 20:4600")]
    [InlineData("not-yet", "0:2100 20:2050")]
    public void A_pump_that_stands_still_at_the_vapour_pressure_of_water_stands_on_water(string outcome, string course) =>
        Assert.Equal(outcome, Judge("vacuum-depth", [Taken("ambient_temperature", 32, "degF", 0), .. Course("vacuum", "micron", course)]).Outcome);

    // 150 psig at 70 degF reads 140.7 psig at 40 degF with no leak: ideal gas at constant volume.
    [Theory]
    [InlineData("holds", 140.7, 40, 120)]
    [InlineData("leaking", 138, 40, 120)]
    [InlineData("leaking", 138, 40, 10)]
    [InlineData("reads-high", 145, 40, 120)]
    [InlineData("too-short", 140.7, 40, 30)]
    public void A_nitrogen_hold_is_judged_with_the_temperature_taken_out_of_it(string outcome, double psig, double fahrenheit, int minutes)
    {
        var judged = Judge(
            "nitrogen-hold",
            Taken("test_pressure", 150, "psig", 0), Taken("test_gas_temperature", 70, "degF", 0), Taken("test_gas_temperature", fahrenheit, "degF", minutes), Taken("test_pressure", psig, "psig", minutes));

        Assert.Equal(outcome, judged.Outcome);
        var expected = judged.Parts.Single(p => p.Name == "expected").Amount!.Value;
        Assert.Equal(140.7, UnitOfMeasure.Psig.FromCanonical(expected.Canonical), 1);
    }

    [Fact]
    public void Without_the_gas_temperature_at_both_ends_a_hold_is_not_compared() =>
        Assert.Equal("uncorrected", Judge("nitrogen-hold", Taken("test_pressure", 150, "psig", 0), Taken("test_pressure", 150, "psig", 90)).Outcome);

    [Theory]
    [InlineData("within", 150)]
    [InlineData("over-limit", 151)]
    [InlineData("low", 70)]
    public void A_test_pressure_never_stands_above_what_the_low_side_is_built_for(string outcome, double psig) =>
        Assert.Equal(outcome, Judge("test-pressure", Taken("low_side_design_pressure", 150, "psig", 0), Taken("test_pressure", psig, "psig", 1)).Outcome);

    [Fact]
    public void Every_judgement_can_be_said_however_little_it_has_to_go_by()
    {
        foreach (var judgement in JudgementTable.All)
        {
            var judged = judgement.Judge(new(VisitState.Empty, 0, At));

            Assert.Contains(judged.Outcome, judgement.Outcomes);
            Assert.False(Conversation.Book.Say(judgement.Phrase(judged.Outcome), UnitSystem.Us, judged.Parts.AsSpan()).IsEmpty);
        }
    }

    private static Judged Judge(string name, params VisitEvent[] log) => JudgementTable.Find(name)!.Judge(new(VisitState.Fold(log), 0, At.AddDays(1)));

    private static IEnumerable<VisitEvent> Course(string fact, string unit, string course) => course.Split(' ').Select(point => point.Split(':'))
        .Select(p => Taken(fact, double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture), unit, int.Parse(p[0], System.Globalization.CultureInfo.InvariantCulture)));

    private static FactTaken Taken(string fact, double value, string unit, int minute) => new(fact, value, unit, null, "unit", null) { At = At.AddMinutes(minute), By = "ada" };
}
