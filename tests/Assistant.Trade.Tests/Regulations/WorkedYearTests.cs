using System.Collections.Immutable;
using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>
/// A year of one rack, invented from end to end: R448A, 600 lb, commercial refrigeration in the United States, 40 CFR 84.106.
/// Beside each step stands the reckoning by hand.
/// </summary>
public class WorkedYearTests
{
    private static readonly Appliance Rack = Pounds("R448A", 600);

    private static readonly ServiceEvent[] Year =
    [
        Added("2025-11-10", 20),                                // before 2026: does not count
        Added("2026-02-10", 30),                                // first since 2026: 30/600 · 365/365 = 5 %
        Removed("2026-04-20", 60),                              // the winter's flooding charge comes out
        Added("2026-06-15", 45),                                // 125 days since 10 February: 45/600 · 365/125 = 21.9 %, over 20 %
        new LeakRepaired(Day("2026-06-20")),
        Initial("2026-06-20"),
        new NormalRunningReached(Day("2026-06-22")),
        FollowUp("2026-06-30"),
        new LeakInspected(Day("2026-09-18")),
        Added("2026-10-25", 60, AdditionReason.Seasonal),       // no more than came out, 188 days later: a seasonal variance
        Added("2026-12-05", 10),                                // 41 days since 25 October: 10/600 · 365/41 = 14.837 %
    ];

    [Fact]
    public void The_annualising_rates_are_those_reckoned_by_hand()
    {
        var rates = LeakRateCourse.Of(Rack, Year, HfcRule, LeakRateMethod.Annualising, Day("2026-12-31"));
        Assert.Equal([5, 21.9, 14.837], rates.Select(r => Math.Round(r.Rate.Percent, 3)));
        Assert.Equal([false, true, false], rates.Select(r => r.IsOver));
    }

    // Rolling: 30/600 = 5 %; (30 + 45)/600 = 12.5 %; since the proof of 30 June 10/600 = 1.667 %.
    [Fact]
    public void The_rolling_rates_are_those_reckoned_by_hand_and_never_over()
    {
        var rates = LeakRateCourse.Of(Rack, Year, HfcRule, LeakRateMethod.Rolling, Day("2026-12-31"));
        Assert.Equal([5, 12.5, 1.667], rates.Select(r => Math.Round(r.Rate.Percent, 3)));
        Assert.All(rates, r => Assert.False(r.IsOver));
    }

    // Where no rule sets a day from which additions count, the 20 lb of 10 November do: 92 days before the 30 lb, 30/600 x 365/92 = 19.837 %;
    // rolling (20 + 30)/600 = 8.333 %. In December only the 10 lb since the proof of 30 June.
    [Fact]
    public void Without_a_rule_every_addition_counts_and_what_a_rate_rests_on_is_told()
    {
        var annualising = LeakRateCourse.Reckoned(Rack.FullCharge, Year, null, LeakRateMethod.Annualising, Day("2026-12-31"));
        var rolling = LeakRateCourse.Reckoned(Rack.FullCharge, Year, null, LeakRateMethod.Rolling, Day("2026-12-31"));

        Assert.Equal((92, 19.837), (annualising[1].DaysSinceLastAddition, Math.Round(annualising[1].Rate.Percent, 3)));
        Assert.Equal((50, 8.333), (Math.Round(rolling[1].AddedWithin.Pounds, 6), Math.Round(rolling[1].Rate.Percent, 3)));
        Assert.Equal([null, null, null, Day("2026-06-30")], rolling.Select(r => r.ProvenOn));
        Assert.Equal(10, Math.Round(rolling[^1].AddedWithin.Pounds, 6));
    }

    [Theory]
    [InlineData("2026-02-10", "leak-rate-within; keep-records-until 2029-02-10")]
    [InlineData("2026-06-15", "leak-rate-over; repair-by 2026-07-15; initial-verification-by 2026-07-15; inspect-quarterly-by 2026-09-15; keep-records-until 2029-06-15")]
    [InlineData("2026-06-21", "leak-rate-over; follow-up-verification-by 2026-06-30; inspect-quarterly-by 2026-09-15; keep-records-until 2029-06-20")]
    [InlineData("2026-06-22", "leak-rate-over; follow-up-verification-by 2026-07-02; inspect-quarterly-by 2026-09-15; keep-records-until 2029-06-22")]
    [InlineData("2026-06-30", "leak-rate-over; inspect-quarterly-by 2026-09-30; keep-records-until 2029-06-30")]
    [InlineData("2026-09-18", "leak-rate-over; inspect-quarterly-by 2026-12-18; keep-records-until 2029-09-18")]
    [InlineData("2026-10-25", "leak-rate-over; seasonal-variance; inspect-quarterly-by 2026-12-18; keep-records-until 2029-10-25")]
    [InlineData("2026-12-05", "leak-rate-within; seasonal-variance; inspect-quarterly-by 2026-12-18; keep-records-until 2029-12-05")]
    [InlineData("2027-06-30", "leak-rate-within; seasonal-variance; inspect-quarterly-by 2026-12-18; keep-records-until 2029-12-05")]
    [InlineData("2027-07-01", "leak-rate-within; seasonal-variance; keep-records-until 2029-12-05")]
    public void Each_day_has_the_dates_that_follow(string asOf, string expected) =>
        Assert.Equal(expected, Spoken(UsFindings(Rack, asOf, Year)));

    // The same year with 1 lb more put back in October than came out in April: all 61 lb count.
    // 61 lb, 132 days since 15 June: 61/600 · 365/132 = 28.112 %, over, within a year of the proof of 30 June.
    [Fact]
    public void One_pound_too_many_put_back_makes_it_a_leak()
    {
        var findings = UsFindings(Rack, "2026-10-25", [.. Year[..^2], Added("2026-10-25", 61, AdditionReason.Seasonal)]);
        Assert.Equal(0.28112, Math.Round(findings[0].Number("rate"), 5));
        Assert.Equal(
            "leak-rate-over; seasonal-not-proven; repair-by 2026-11-24; initial-verification-by 2026-11-24; retrofit-or-retirement-plan-by 2026-11-24; inspect-quarterly-by 2026-12-18; keep-records-until 2029-10-25",
            Spoken(findings));
    }

    private static string Spoken(ImmutableArray<RegulationFinding> findings) =>
        string.Join("; ", findings.Select(f => Codes.Of(f.Code) + (f.Due is { } due ? $" {due:yyyy-MM-dd}" : "")));
}
