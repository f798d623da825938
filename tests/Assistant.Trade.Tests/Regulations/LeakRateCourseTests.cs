using System.Collections.Immutable;
using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>Rates by hand from the formulas of 40 CFR 82.152, a full charge of 100 lb unless said otherwise.</summary>
public class LeakRateCourseTests
{
    // 82.157(c)(2) and 84.106(c)(2): repair is asked for over the rate, so the rate itself is within.
    [Theory]
    [InlineData(ApplianceUse.CommercialRefrigeration, 19.99, false)]
    [InlineData(ApplianceUse.CommercialRefrigeration, 20, false)]
    [InlineData(ApplianceUse.CommercialRefrigeration, 20.01, true)]
    [InlineData(ApplianceUse.IndustrialProcess, 29.99, false)]
    [InlineData(ApplianceUse.IndustrialProcess, 30, false)]
    [InlineData(ApplianceUse.IndustrialProcess, 30.01, true)]
    [InlineData(ApplianceUse.ComfortCooling, 9.99, false)]
    [InlineData(ApplianceUse.ComfortCooling, 10, false)]
    [InlineData(ApplianceUse.ComfortCooling, 10.01, true)]
    [InlineData(ApplianceUse.Other, 10, false)]
    [InlineData(ApplianceUse.Other, 10.01, true)]
    public void A_rate_is_over_above_the_threshold_and_not_at_it(ApplianceUse use, double pounds, bool over)
    {
        Assert.Equal(over, Course(OzoneRule, "R22", use, Added("2026-02-01", pounds)).Single().IsOver);
        Assert.Equal(over, Course(HfcRule, "R448A", use, Added("2026-02-01", pounds)).Single().IsOver);
    }

    [Fact]
    public void The_first_addition_since_2026_counts_as_365_days_and_earlier_ones_do_not_count()
    {
        var rate = Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Added("2025-12-30", 15), Added("2026-01-29", 15)).Single();
        Assert.Equal(365, rate.DaysSinceLastAddition);
        Assert.Equal(15, rate.Rate.Percent, 9);
    }

    // Under 82.157 the older one counts: 15/100 · 365/30 = 182.5 %.
    [Fact]
    public void Under_the_ozone_rule_every_addition_counts()
    {
        var rates = Course(OzoneRule, "R22", ApplianceUse.CommercialRefrigeration, Added("2025-12-30", 15), Added("2026-01-29", 15));
        Assert.Equal([15, 182.5], rates.Select(r => Math.Round(r.Rate.Percent, 9)));
    }

    // 5/100 · 365/73 = 25 %; a gap of more than a year is cut to 365 days: 5 %.
    [Theory]
    [InlineData("2026-03-15", 73, 25)]
    [InlineData("2027-01-01", 365, 5)]
    [InlineData("2027-01-02", 366, 5)]
    [InlineData("2028-06-01", 882, 5)]
    public void The_annualising_rate_takes_the_shorter_of_the_days_and_365(string day, int days, double percent)
    {
        var rate = Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Added("2026-01-01", 1), Added(day, 5))[^1];
        Assert.Equal(days, rate.DaysSinceLastAddition);
        Assert.Equal(percent, rate.Rate.Percent, 9);
    }

    [Fact]
    public void Additions_of_one_day_are_one_addition()
    {
        var rate = Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Added("2026-02-01", 6), Added("2026-02-01", 4)).Single();
        Assert.Equal(10, rate.Rate.Percent, 9);
    }

    [Theory]
    [InlineData(AdditionReason.NewInstallation)]
    [InlineData(AdditionReason.Retrofit)]
    public void The_first_charge_is_not_reckoned_but_the_days_run_from_it(AdditionReason reason)
    {
        var rate = Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Added("2026-01-01", 100, reason), Added("2026-03-15", 5)).Single();
        Assert.Equal(25, rate.Rate.Percent, 9);
    }

    [Fact]
    public void A_proven_seasonal_variance_is_not_reckoned() =>
        Assert.Empty(Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Removed("2026-04-20", 30), Added("2026-10-20", 30, AdditionReason.Seasonal)));

    [Fact]
    public void A_seasonal_addition_that_nothing_bears_out_counts_in_full() =>
        Assert.Equal(31, Course(HfcRule, "R448A", ApplianceUse.CommercialRefrigeration, Removed("2026-04-20", 30), Added("2026-10-20", 31, AdditionReason.Seasonal)).Single().Rate.Percent, 9);

    // Rolling: 8, 8 + 7 = 15; after the proven repair only what was added since: 4.
    [Fact]
    public void The_rolling_rate_sums_a_year_or_since_the_last_proven_repair()
    {
        ServiceEvent[] events = [Added("2026-02-01", 8), Added("2026-05-01", 7), FollowUp("2026-06-01"), Added("2026-08-01", 4)];
        var rates = LeakRateCourse.Of(Pounds("R448A", 100), events, HfcRule, LeakRateMethod.Rolling, Day("2026-12-31"));
        Assert.Equal([8, 15, 4], rates.Select(r => Math.Round(r.Rate.Percent, 9)));
    }

    // A proof of the same day is of the leak before: the 7 lb of its day count with the 8 lb.
    [Fact]
    public void A_proof_of_the_day_does_not_hide_the_addition_of_the_day()
    {
        var rates = LeakRateCourse.Of(Pounds("R448A", 100), [Added("2026-02-01", 8), FollowUp("2026-05-01"), Added("2026-05-01", 7)], HfcRule, LeakRateMethod.Rolling, Day("2026-12-31"));
        Assert.Equal([8, 15], rates.Select(r => Math.Round(r.Rate.Percent, 9)));
    }

    [Fact]
    public void What_happened_later_is_left_out() =>
        Assert.Single(LeakRateCourse.Of(Pounds("R448A", 100), [Added("2026-02-01", 8), Added("2026-05-01", 7)], HfcRule, LeakRateMethod.Annualising, Day("2026-04-30")));

    private static ImmutableArray<LeakRateAt> Course(LeakRepairRegulation rule, string refrigerant, ApplianceUse use, params ServiceEvent[] events) =>
        LeakRateCourse.Of(Pounds(refrigerant, 100, use), events, rule, LeakRateMethod.Annualising, Day("2030-12-31"));
}
