using Assistant.Trade.Regulations;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

public class RegulationLibraryTests
{
    [Fact]
    public void Five_rules_are_shipped_each_with_source_and_day_read()
    {
        Assert.Equal(
            ["eu-2024-573-art-13", "eu-2024-573-art-5", "us-40-cfr-82-157", "us-40-cfr-84-106", "us-40-cfr-84-108"],
            RegulationLibrary.All.Select(r => r.Rule));
        Assert.All(RegulationLibrary.All, r => Assert.False(string.IsNullOrWhiteSpace(r.Source)));
        Assert.All(RegulationLibrary.All, r => Assert.Equal(Day("2026-11-25"), r.DateRead));
    }

    [Fact]
    public void What_is_recalled_and_what_is_under_revision_says_so()
    {
        Assert.Equal(SourceBasis.Published, OzoneRule.Basis);
        Assert.True(HfcRule.UnderRevision);
        Assert.Equal(SourceBasis.FromMemory, DetectionRule.Basis);
        Assert.All(new Regulation[] { EuChecks, EuServiceGas }, r => Assert.Equal(SourceBasis.Published, r.Basis));
    }

    // 82.157(a): class I and II, 50 lb or more; 84.106(a): 15 lb or more, since 2026-01-01.
    [Theory]
    [InlineData("R22", 49.99, "2026-06-01", "")]
    [InlineData("R22", 50, "2026-06-01", "us-40-cfr-82-157")]
    [InlineData("R22", 50.01, "2026-06-01", "us-40-cfr-82-157")]
    [InlineData("R22", 50, "2020-04-09", "")]
    [InlineData("R22", 50, "2020-04-10", "us-40-cfr-82-157")]
    [InlineData("R448A", 14.99, "2026-06-01", "")]
    [InlineData("R448A", 15, "2026-06-01", "us-40-cfr-84-106")]
    [InlineData("R448A", 15.01, "2026-06-01", "us-40-cfr-84-106")]
    [InlineData("R448A", 100, "2025-12-31", "")]
    [InlineData("R448A", 100, "2026-01-01", "us-40-cfr-84-106")]
    [InlineData("R448A", 1499.99, "2026-06-01", "us-40-cfr-84-106")]
    [InlineData("R448A", 1500, "2026-06-01", "us-40-cfr-84-106 us-40-cfr-84-108")]
    [InlineData("R290", 2000, "2026-06-01", "")]
    [InlineData("R1234yf", 2000, "2026-06-01", "")]
    [InlineData("R744", 2000, "2026-06-01", "")]
    public void In_the_United_States_substance_charge_and_day_decide(string refrigerant, double pounds, string day, string rules) =>
        Assert.Equal(rules, Rules(Pounds(refrigerant, pounds), Jurisdiction.UnitedStates, day));

    [Fact]
    public void Fifty_pounds_said_in_kilograms_are_fifty_pounds() =>
        Assert.True(OzoneRule.AppliesTo(Kilograms("R22", 22.6796185), Day("2026-06-01")));

    [Fact]
    public void Residential_and_light_commercial_comfort_cooling_is_left_out_of_the_hfc_rule_alone()
    {
        var hfc = Pounds("R410A", 20, ApplianceUse.ComfortCooling);
        Assert.Equal("us-40-cfr-84-106", Rules(hfc, Jurisdiction.UnitedStates, "2026-06-01"));
        Assert.Equal("", Rules(hfc with { IsResidentialOrLightCommercial = true }, Jurisdiction.UnitedStates, "2026-06-01"));
        Assert.True(OzoneRule.AppliesTo(Pounds("R22", 60, ApplianceUse.ComfortCooling) with { IsResidentialOrLightCommercial = true }, Day("2026-06-01")));
    }

    [Fact]
    public void A_rule_of_one_place_does_not_hold_in_another()
    {
        Assert.Equal("eu-2024-573-art-13 eu-2024-573-art-5", Rules(Pounds("R404A", 2000), Jurisdiction.EuropeanUnion, "2026-06-01"));
        Assert.Equal("", Rules(Pounds("R22", 2000), Jurisdiction.EuropeanUnion, "2026-06-01"));
    }

    [Fact]
    public void A_rule_ends_with_its_last_day()
    {
        var ended = OzoneRule with { ValidTo = Day("2026-12-31") };
        Assert.True(ended.IsValidOn(Day("2026-12-31")));
        Assert.False(ended.IsValidOn(Day("2027-01-01")));
    }

    private static string Rules(Appliance appliance, Jurisdiction jurisdiction, string day) =>
        string.Join(' ', RegulationLibrary.For(appliance, jurisdiction, Day(day)).Select(r => r.Rule));
}
