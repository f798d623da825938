using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>40 CFR 84.108, from memory: industrial process and commercial refrigeration from 1,500 lb.</summary>
public class LeakDetectionTests
{
    [Theory]
    [InlineData(1499.99, ApplianceUse.CommercialRefrigeration, false)]
    [InlineData(1500, ApplianceUse.CommercialRefrigeration, true)]
    [InlineData(1500.01, ApplianceUse.IndustrialProcess, true)]
    [InlineData(1500, ApplianceUse.ComfortCooling, false)]
    [InlineData(1500, ApplianceUse.Other, false)]
    public void It_is_asked_of_refrigeration_from_1500_pounds(double pounds, ApplianceUse use, bool asked) =>
        Assert.Equal(asked, DetectionRule.AppliesTo(Pounds("R448A", pounds, use), Day("2026-06-01")));

    [Theory]
    [InlineData("2016-12-31", null)]
    [InlineData("2017-01-01", "2027-01-01")]
    [InlineData("2025-12-31", "2027-01-01")]
    [InlineData("2026-01-01", "2026-01-31")]
    [InlineData("2026-05-10", "2026-06-09")]
    public void The_day_of_installation_sets_the_date(string installed, string? due) =>
        Assert.Equal(due is null ? null : Day(due), Findings(Pounds("R448A", 2000) with { InstalledOn = Day(installed) }).Due(RegulationCode.LeakDetectionBy));

    [Fact]
    public void Where_the_day_of_installation_is_not_known_it_is_asked_about() =>
        Assert.Equal(Day("2027-01-01"), Findings(Pounds("R448A", 2000)).Due(RegulationCode.LeakDetectionBy));

    [Fact]
    public void Where_it_is_installed_nothing_is_asked() =>
        Assert.Empty(Findings(Pounds("R448A", 2000) with { HasLeakDetection = true }));

    private static System.Collections.Immutable.ImmutableArray<RegulationFinding> Findings(Appliance appliance) =>
        Compliance.Of(appliance, [], Jurisdiction.UnitedStates, LeakRateMethod.Annualising, Day("2026-06-15"));
}
