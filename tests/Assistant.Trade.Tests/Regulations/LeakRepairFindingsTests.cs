using Assistant.Trade.Regulations;
using UnitsNet;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>Dates by 40 CFR 84.106(d) to (l), the same as 82.157(d) to (l). 21 lb of 100 lb on 1 March 2026 is 21 %, over 20 %.</summary>
public class LeakRepairFindingsTests
{
    private static readonly Appliance Rack = Pounds("R448A", 100);

    private static readonly RefrigerantAdded Leak = Added("2026-03-01", 21);

    [Fact]
    public void A_rate_within_the_threshold_asks_for_nothing_but_its_record()
    {
        var findings = UsFindings(Rack, "2026-03-01", Added("2026-03-01", 20));
        Assert.Equal([RegulationCode.LeakRateWithin, RegulationCode.KeepRecordsUntil], findings.Select(f => f.Code));
        Assert.Equal(0.2, findings[0].Number("rate"), 9);
        Assert.Equal(0.2, findings[0].Number("threshold"), 9);
    }

    [Fact]
    public void Nothing_done_is_nothing_found() => Assert.Empty(UsFindings(Rack, "2026-03-01"));

    // 30 days from 1 March is 31 March; 120 days is 29 June.
    [Theory]
    [InlineData(false, "2026-03-31")]
    [InlineData(true, "2026-06-29")]
    public void A_leak_is_repaired_and_first_verified_within_30_days_or_120_with_a_process_shutdown(bool shutdown, string due)
    {
        var findings = UsFindings(Rack with { RepairNeedsProcessShutdown = shutdown }, "2026-03-02", Leak);
        Assert.True(findings.Has(RegulationCode.LeakRateOver));
        Assert.Equal(Day(due), findings.Due(RegulationCode.RepairBy));
        Assert.Equal(Day(due), findings.Due(RegulationCode.InitialVerificationBy));
        Assert.False(findings.Has(RegulationCode.FollowUpVerificationBy));
    }

    [Fact]
    public void The_follow_up_is_due_ten_days_after_the_initial_verification()
    {
        var findings = UsFindings(Rack, "2026-03-11", Leak, Initial("2026-03-10"));
        Assert.Equal(Day("2026-03-20"), findings.Due(RegulationCode.FollowUpVerificationBy));
        Assert.False(findings.Has(RegulationCode.RepairBy));
        Assert.False(findings.Has(RegulationCode.InitialVerificationBy));
    }

    [Fact]
    public void The_ten_days_run_from_normal_running_where_the_appliance_was_opened() =>
        Assert.Equal(
            Day("2026-03-25"),
            UsFindings(Rack, "2026-03-16", Leak, Initial("2026-03-10"), new NormalRunningReached(Day("2026-03-15"))).Due(RegulationCode.FollowUpVerificationBy));

    [Fact]
    public void A_failed_initial_verification_leaves_the_repair_open() =>
        Assert.Equal(Day("2026-03-31"), UsFindings(Rack, "2026-03-11", Leak, Initial("2026-03-10", passed: false)).Due(RegulationCode.RepairBy));

    [Fact]
    public void A_failed_follow_up_opens_the_repair_again()
    {
        var findings = UsFindings(Rack, "2026-03-16", Leak, Initial("2026-03-10"), FollowUp("2026-03-15", passed: false));
        Assert.Equal(Day("2026-03-31"), findings.Due(RegulationCode.RepairBy));
        Assert.False(findings.Has(RegulationCode.RetrofitOrRetirementPlanBy));
    }

    [Fact]
    public void A_proven_repair_closes_the_leak()
    {
        var findings = UsFindings(Rack, "2026-04-15", Leak, Initial("2026-03-10"), FollowUp("2026-03-18"));
        Assert.Equal(
            [RegulationCode.LeakRateOver, RegulationCode.InspectYearlyBy, RegulationCode.KeepRecordsUntil],
            findings.Select(f => f.Code));
    }

    [Fact]
    public void Until_it_is_proven_the_dates_run_from_the_first_addition_that_showed_the_leak() =>
        Assert.Equal(Day("2026-03-31"), UsFindings(Rack, "2026-03-21", Leak, Added("2026-03-20", 5)).Due(RegulationCode.RepairBy));

    // Repair, test, then charge: the charge is what shows the rate.
    [Theory]
    [InlineData("2026-02-27", "2026-03-09")]
    [InlineData("2026-03-01", "2026-03-11")]
    public void A_repair_tested_before_it_was_charged_needs_its_follow_up_only(string tested, string due)
    {
        var findings = UsFindings(Rack, "2026-03-02", Leak, Initial(tested));
        Assert.Equal(Day(due), findings.Due(RegulationCode.FollowUpVerificationBy));
        Assert.False(findings.Has(RegulationCode.RepairBy));
    }

    [Fact]
    public void A_test_before_an_earlier_addition_or_one_that_failed_since_proves_nothing()
    {
        Assert.True(UsFindings(Rack, "2026-03-02", Initial("2026-02-01"), Added("2026-02-10", 1), Leak).Has(RegulationCode.RepairBy));
        Assert.True(UsFindings(Rack, "2026-03-02", Initial("2026-02-27"), Initial("2026-02-28", passed: false), Leak).Has(RegulationCode.RepairBy));
        Assert.True(UsFindings(Rack, "2026-03-02", Initial("2026-02-20"), FollowUp("2026-02-25"), Leak).Has(RegulationCode.RepairBy));
    }

    [Fact]
    public void An_initial_test_that_failed_after_one_that_passed_opens_the_repair_again() =>
        Assert.True(UsFindings(Rack, "2026-03-12", Leak, Initial("2026-03-10"), Initial("2026-03-11", passed: false)).Has(RegulationCode.RepairBy));

    [Fact]
    public void A_follow_up_of_the_day_is_of_the_older_leak_and_the_charge_of_the_day_opens_the_next()
    {
        var findings = UsFindings(Rack, "2026-03-18", Leak, Initial("2026-03-10"), FollowUp("2026-03-18"), Added("2026-03-18", 21));
        Assert.Equal(Day("2026-04-17"), findings.Due(RegulationCode.RepairBy));
        Assert.Equal(Day("2026-04-17"), findings.Due(RegulationCode.RetrofitOrRetirementPlanBy));
    }

    [Fact]
    public void A_retrofit_ends_what_was_asked_before_it()
    {
        var findings = UsFindings(Rack, "2026-03-20", Leak, Added("2026-03-20", 100, AdditionReason.Retrofit));
        Assert.Equal([RegulationCode.LeakRateOver, RegulationCode.KeepRecordsUntil], findings.Select(f => f.Code));
    }

    // The plan: within 30 days of the day the repair was shown not to have held.
    [Theory]
    [InlineData("2026-03-31", null)]
    [InlineData("2026-04-01", "2026-04-30")]
    public void A_repair_date_that_passed_leads_to_a_plan(string asOf, string? due) =>
        Assert.Equal(due is null ? null : Day(due), UsFindings(Rack, asOf, Leak).Due(RegulationCode.RetrofitOrRetirementPlanBy));

    [Fact]
    public void A_follow_up_that_failed_after_the_repair_date_leads_to_a_plan_from_that_day() =>
        Assert.Equal(
            Day("2026-05-05"),
            UsFindings(Rack, "2026-04-06", Leak, Initial("2026-03-28"), FollowUp("2026-04-05", passed: false)).Due(RegulationCode.RetrofitOrRetirementPlanBy));

    // Proven on 18 March 2026; 21 lb more, 365 days after the addition before, is 21 % again.
    [Theory]
    [InlineData("2027-03-18", "2027-04-17")]
    [InlineData("2027-03-19", null)]
    public void Leaking_again_over_the_threshold_within_a_year_of_the_proof_leads_to_a_plan(string again, string? due)
    {
        var findings = UsFindings(Rack, again, Leak, Initial("2026-03-10"), FollowUp("2026-03-18"), Added(again, 21));
        Assert.True(findings.Has(RegulationCode.RepairBy));
        Assert.Equal(due is null ? null : Day(due), findings.Due(RegulationCode.RetrofitOrRetirementPlanBy));
    }

    [Fact]
    public void The_plan_is_carried_out_within_a_year_of_that_day() =>
        Assert.Equal("2027-03-31", UsFindings(Rack, "2026-04-01", Leak).Single(f => f.Code == RegulationCode.RetrofitOrRetirementPlanBy).Word("done"));

    // 125 % of 100 lb leaked in one calendar year, at it and above; the report is due on 1 March of the next year.
    [Theory]
    [InlineData(64.99, null)]
    [InlineData(65, "2027-03-01")]
    [InlineData(65.01, "2027-03-01")]
    public void A_hundred_and_twenty_five_percent_in_a_calendar_year_is_reported_by_the_first_of_March(double second, string? due) =>
        Assert.Equal(
            due is null ? null : Day(due),
            UsFindings(Rack, "2026-12-31", Added("2026-02-01", 60), Added("2026-12-31", second)).Due(RegulationCode.AnnualReportBy));

    [Fact]
    public void The_report_does_not_sum_over_the_turn_of_the_year() =>
        Assert.Null(UsFindings(Rack, "2027-01-02", Added("2026-12-31", 65), Added("2027-01-01", 65)).Due(RegulationCode.AnnualReportBy));

    [Fact]
    public void The_report_of_last_year_is_still_named_this_year_and_not_the_next()
    {
        var leaked = Added("2026-06-01", 130);
        Assert.Equal(Day("2027-03-01"), UsFindings(Rack, "2027-12-31", leaked).Due(RegulationCode.AnnualReportBy));
        Assert.Null(UsFindings(Rack, "2028-01-01", leaked).Due(RegulationCode.AnnualReportBy));
    }

    [Fact]
    public void Records_are_kept_three_years_from_the_last_of_them() =>
        Assert.Equal(Day("2029-05-04"), UsFindings(Rack, "2026-06-01", Leak, new LeakInspected(Day("2026-05-04"))).Due(RegulationCode.KeepRecordsUntil));

    [Fact]
    public void A_seasonal_move_is_named_with_what_was_held_for_it()
    {
        var proven = UsFindings(Rack, "2026-10-20", Removed("2026-04-20", 30), Added("2026-10-20", 30, AdditionReason.Seasonal));
        Assert.Equal([RegulationCode.SeasonalVariance, RegulationCode.KeepRecordsUntil], proven.Select(f => f.Code));
        Assert.Equal(Mass.FromPounds(30).Kilograms, proven[0].Number("held"), 9);
        var unproven = UsFindings(Rack, "2026-10-20", Added("2026-10-20", 30, AdditionReason.Seasonal));
        Assert.Contains(RegulationCode.SeasonalNotProven, unproven.Select(f => f.Code));
        Assert.Contains(RegulationCode.LeakRateOver, unproven.Select(f => f.Code));
    }
}
