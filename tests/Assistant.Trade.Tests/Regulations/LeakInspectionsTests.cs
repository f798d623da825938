using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>
/// 82.157(g) and 84.106(g): commercial refrigeration and industrial process from 500 lb every three months, others once a calendar
/// year, until the rate stayed within for four quarters or one year. The leak of 1 March 2026 is proven repaired on 18 March.
/// </summary>
public class LeakInspectionsTests
{
    [Theory]
    [InlineData(ApplianceUse.CommercialRefrigeration, 499.99, false)]
    [InlineData(ApplianceUse.CommercialRefrigeration, 500, true)]
    [InlineData(ApplianceUse.CommercialRefrigeration, 500.01, true)]
    [InlineData(ApplianceUse.IndustrialProcess, 500, true)]
    [InlineData(ApplianceUse.ComfortCooling, 500, false)]
    [InlineData(ApplianceUse.Other, 5000, false)]
    public void Large_refrigeration_is_inspected_every_quarter_and_the_rest_every_calendar_year(ApplianceUse use, double pounds, bool quarterly)
    {
        var findings = Findings(pounds, use, "2026-04-01");
        Assert.Equal(quarterly ? Day("2026-06-18") : null, findings.Due(RegulationCode.InspectQuarterlyBy));
        Assert.Equal(quarterly ? null : Day("2026-12-31"), findings.Due(RegulationCode.InspectYearlyBy));
    }

    [Fact]
    public void An_inspection_moves_the_next_one_on()
    {
        var inspected = new LeakInspected(Day("2026-06-10"));
        Assert.Equal(Day("2026-09-10"), Findings(600, ApplianceUse.CommercialRefrigeration, "2026-07-01", inspected).Due(RegulationCode.InspectQuarterlyBy));
        Assert.Equal(Day("2027-12-31"), Findings(100, ApplianceUse.CommercialRefrigeration, "2026-07-01", inspected).Due(RegulationCode.InspectYearlyBy));
    }

    [Fact]
    public void An_inspection_no_later_than_the_proof_does_not_count() =>
        Assert.Equal(Day("2026-12-31"), Findings(100, ApplianceUse.CommercialRefrigeration, "2026-04-01", new LeakInspected(Day("2026-03-18"))).Due(RegulationCode.InspectYearlyBy));

    [Theory]
    [InlineData("2027-03-18", true)]
    [InlineData("2027-03-19", false)]
    public void They_end_when_the_rate_stayed_within_for_a_year(string asOf, bool still) =>
        Assert.Equal(still, Findings(600, ApplianceUse.CommercialRefrigeration, asOf).Has(RegulationCode.InspectQuarterlyBy));

    [Fact]
    public void Before_the_repair_is_proven_they_count_from_the_addition() =>
        Assert.Equal(Day("2026-06-01"), UsFindings(Pounds("R448A", 600), "2026-03-05", Added("2026-03-01", 300)).Due(RegulationCode.InspectQuarterlyBy));

    private static System.Collections.Immutable.ImmutableArray<RegulationFinding> Findings(double pounds, ApplianceUse use, string asOf, params ServiceEvent[] more) =>
        UsFindings(Pounds("R448A", pounds, use), asOf, [Added("2026-03-01", pounds / 2), Initial("2026-03-10"), FollowUp("2026-03-18"), .. more]);
}
