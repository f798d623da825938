using System.Collections.Immutable;
using Assistant.Trade.Regulations;
using Assistant.Trade.Rules;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

public class ComplianceTests
{
    // Regulation (EU) 2024/573 art. 13, from memory: virgin gas of GWP 2500 or more, refrigeration since 2025, air conditioning since 2026.
    [Theory]
    [InlineData("R404A", ApplianceUse.CommercialRefrigeration, "2024-12-31", null)]
    [InlineData("R404A", ApplianceUse.CommercialRefrigeration, "2025-01-01", "allowed")]
    [InlineData("R404A", ApplianceUse.CommercialRefrigeration, "2029-12-31", "allowed")]
    [InlineData("R404A", ApplianceUse.CommercialRefrigeration, "2030-01-01", "banned")]
    [InlineData("R404A", ApplianceUse.ComfortCooling, "2025-12-31", null)]
    [InlineData("R404A", ApplianceUse.ComfortCooling, "2026-01-01", "allowed")]
    [InlineData("R410A", ApplianceUse.CommercialRefrigeration, "2026-06-01", null)]
    [InlineData("R290", ApplianceUse.CommercialRefrigeration, "2026-06-01", null)]
    public void Virgin_gas_of_high_potential_is_banned_from_service(string refrigerant, ApplianceUse use, string day, string? reclaimed)
    {
        var ban = Compliance.Of(Kilograms(refrigerant, 10, use), [], Jurisdiction.EuropeanUnion, LeakRateMethod.Annualising, Day(day)).SingleOrDefault(f => f.Code == RegulationCode.VirginGasBanned);
        Assert.Equal(reclaimed, ban?.Word("reclaimed"));
    }

    // R125 (3500) in carbon dioxide (1): 2500 is reached with a share of 2499/3499 = 0.714204058302372.
    [Theory]
    [InlineData(0.7142, false)]
    [InlineData(0.714204058302372, true)]
    [InlineData(0.7143, true)]
    public void The_ban_begins_at_2500(double share, bool banned)
    {
        var appliance = Kilograms("R125", 10) with { Composition = [new("R125", share), new("R744", 1 - share)] };
        Assert.Equal(banned, EuServiceGas.BanFor(appliance, Day("2026-06-01")) is not null);
    }

    [Fact]
    public void One_method_holds_for_all_appliances_of_a_facility()
    {
        var (one, other) = (Pounds("R448A", 100), Pounds("R449A", 200));
        Assert.Equal(
            [RegulationCode.OneMethodForTheFacility],
            Facility((one, LeakRateMethod.Annualising), (other, LeakRateMethod.Rolling)).Select(f => f.Code));
        Assert.Empty(Facility((one, LeakRateMethod.Rolling), (other, LeakRateMethod.Rolling)));
    }

    [Fact]
    public void Appliances_no_rule_covers_do_not_bind_the_method() =>
        Assert.Empty(Facility((Pounds("R448A", 100), LeakRateMethod.Annualising), (Pounds("R448A", 10), LeakRateMethod.Rolling)));

    [Fact]
    public void Every_finding_carries_its_source_and_ends_with_the_reminder()
    {
        var findings = Compliance.Of(
            Pounds("R404A", 2000), [Added("2026-03-01", 500), Initial("2026-03-05")], Jurisdiction.UnitedStates, LeakRateMethod.Annualising, Day("2026-06-01"))
            .AddRange(Compliance.Of(Kilograms("R404A", 200), [new LeakRepaired(Day("2026-05-20"))], Jurisdiction.EuropeanUnion, LeakRateMethod.Annualising, Day("2026-06-01")));
        Assert.Equal(4, findings.Select(f => f.Rule.Rule).Distinct().Count());
        Assert.All(findings, f =>
        {
            Assert.Equal("regulation.check-the-current-text", f.Reminder.Key);
            Assert.Equal(f.Rule.Source, f.Reminder.Parts.Single(p => p.Name == "source").Word);
            Assert.Equal("2026-11-25", f.Reminder.Parts.Single(p => p.Name == "read").Word);
            Assert.Contains(f.Says.Parts, p => p.Name == "source" && !string.IsNullOrWhiteSpace(p.Word));
        });
    }

    [Theory]
    [InlineData("us-40-cfr-82-157", "published")]
    [InlineData("us-40-cfr-84-106", "under-revision")]
    [InlineData("eu-2024-573-art-5", "published")]
    public void The_reminder_says_how_far_the_figures_can_be_trusted(string rule, string basis) =>
        Assert.Equal(basis, new RegulationFinding(RegulationCode.LeakRateWithin, Rule<Regulation>(rule), "(b)", null).Reminder.Parts.Single(p => p.Name == "basis").Word);

    [Fact]
    public void A_sentence_has_its_key_and_its_date()
    {
        Reason says = UsFindings(Pounds("R448A", 100), "2026-03-02", Added("2026-03-01", 21)).Single(f => f.Code == RegulationCode.RepairBy).Says;
        Assert.Equal("regulation.repair-by", says.Key);
        Assert.Equal("2026-03-31", says.Parts.Single(p => p.Name == "due").Word);
        Assert.Equal("84.106(d)", says.Parts.Single(p => p.Name == "source").Word);
    }

    private static ImmutableArray<RegulationFinding> Facility(params (Appliance, LeakRateMethod)[] appliances) =>
        Compliance.OfFacility(appliances, Jurisdiction.UnitedStates, Day("2026-06-01"));
}
