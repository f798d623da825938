using System.Collections.Immutable;
using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>Regulation (EU) 2024/573, articles 4 to 7, from memory. R134a has a GWP of 1430: 5 t are 3.4965035 kg, 50 t 34.965035, 500 t 349.65035.</summary>
public class LeakCheckFindingsTests
{
    [Theory]
    [InlineData("R134a", 3.4965, false, null)]
    [InlineData("R134a", 3.4965034965034965, false, "2027-03-01")]
    [InlineData("R134a", 3.4966, false, "2027-03-01")]
    [InlineData("R134a", 3.4966, true, "2028-03-01")]
    [InlineData("R134a", 34.965, false, "2027-03-01")]
    [InlineData("R134a", 34.965034965034965, false, "2026-09-01")]
    [InlineData("R134a", 34.966, false, "2026-09-01")]
    [InlineData("R134a", 34.966, true, "2027-03-01")]
    [InlineData("R134a", 349.65, false, "2026-09-01")]
    [InlineData("R134a", 349.65034965034965, false, "2026-06-01")]
    [InlineData("R134a", 349.66, true, "2026-09-01")]
    [InlineData("R1234yf", 0.999, false, null)]
    [InlineData("R1234yf", 1, false, "2027-03-01")]
    [InlineData("R1234yf", 1.001, true, "2028-03-01")]
    [InlineData("R1234yf", 9.999, false, "2027-03-01")]
    [InlineData("R1234yf", 10, false, "2026-09-01")]
    [InlineData("R1234yf", 99.999, false, "2026-09-01")]
    [InlineData("R1234yf", 100, false, "2026-06-01")]
    [InlineData("R1234yf", 100, true, "2026-09-01")]
    [InlineData("R290", 500, false, null)]
    [InlineData("R22", 500, false, null)]
    public void The_next_check_follows_from_the_charge(string refrigerant, double kilograms, bool detection, string? due) =>
        Assert.Equal(
            due is null ? null : Day(due),
            Findings(Kilograms(refrigerant, kilograms) with { HasLeakDetection = detection }, "2026-04-01", new LeakInspected(Day("2026-03-01"))).Due(RegulationCode.LeakCheckBy));

    [Fact]
    public void Without_a_check_the_months_run_from_the_installation_and_without_that_no_date_is_made_up()
    {
        var appliance = Kilograms("R134a", 10);
        Assert.Equal(Day("2027-02-10"), Findings(appliance with { InstalledOn = Day("2026-02-10") }, "2026-04-01").Due(RegulationCode.LeakCheckBy));
        var unknown = Findings(appliance, "2026-04-01").Single();
        Assert.Equal(RegulationCode.LeakCheckUndated, unknown.Code);
        Assert.Null(unknown.Due);
        Assert.Equal(12, unknown.Number("months"));
        Assert.Equal(14.3, unknown.Number("tonnes"), 9);
    }

    // Hermetically sealed below 10 t, which is 6.993 kg of R134a, or below 2 kg of an annex II gas.
    [Theory]
    [InlineData("R134a", 6.993, true)]
    [InlineData("R134a", 6.993006993006993, false)]
    [InlineData("R134a", 6.9931, false)]
    [InlineData("R1234yf", 1.999, true)]
    [InlineData("R1234yf", 2, false)]
    public void Small_hermetic_equipment_is_exempt(string refrigerant, double kilograms, bool exempt)
    {
        var findings = Findings(Kilograms(refrigerant, kilograms) with { IsHermeticallySealed = true }, "2026-04-01");
        Assert.Equal(exempt ? [RegulationCode.HermeticExempt] : [RegulationCode.LeakCheckUndated], findings.Select(f => f.Code));
    }

    [Theory]
    [InlineData(349.65, false, false)]
    [InlineData(349.65034965034965, false, true)]
    [InlineData(349.66, false, true)]
    [InlineData(349.66, true, false)]
    public void From_500_tonnes_detection_is_compulsory(double kilograms, bool installed, bool asked) =>
        Assert.Equal(asked, Findings(Kilograms("R134a", kilograms) with { HasLeakDetection = installed }, "2026-04-01").Has(RegulationCode.LeakDetectionCompulsory));

    [Theory]
    [InlineData(null, "2026-02-28")]
    [InlineData("2026-01-31", "2026-02-28")]
    [InlineData("2026-02-01", null)]
    public void After_a_repair_it_is_checked_again_after_a_day_of_running_and_within_a_month(string? check, string? due)
    {
        ServiceEvent[] events = check is null ? [new LeakRepaired(Day("2026-01-31"))] : [new LeakRepaired(Day("2026-01-31")), new LeakInspected(Day(check))];
        var findings = Findings(Kilograms("R134a", 10), "2026-02-05", events);
        Assert.Equal(due is null ? null : Day(due), findings.Due(RegulationCode.CheckAfterRepairBy));
    }

    [Fact]
    public void The_check_after_a_repair_says_its_24_hours() =>
        Assert.Equal(24, Findings(Kilograms("R134a", 10), "2026-02-05", new LeakRepaired(Day("2026-01-31"))).Single(f => f.Code == RegulationCode.CheckAfterRepairBy).Number("hours"));

    [Fact]
    public void Records_are_kept_five_years() =>
        Assert.Equal(Day("2031-03-01"), Findings(Kilograms("R134a", 10), "2026-04-01", new LeakInspected(Day("2026-03-01"))).Due(RegulationCode.KeepRecordsUntil));

    [Fact]
    public void The_rule_holds_from_its_first_day()
    {
        Assert.Empty(Findings(Kilograms("R134a", 10), "2024-03-10"));
        Assert.NotEmpty(Findings(Kilograms("R134a", 10), "2024-03-11"));
    }

    private static ImmutableArray<RegulationFinding> Findings(Appliance appliance, string asOf, params ServiceEvent[] events) =>
        LeakCheckFindings.Of(appliance, events, EuChecks, Day(asOf));
}
