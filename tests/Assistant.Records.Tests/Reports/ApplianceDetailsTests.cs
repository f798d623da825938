using System.Collections.Immutable;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Records.Reports.Model;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Refrigerants;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Records.Tests.Reports;

/// <summary>An invented rack of 100 lb. Thresholds: 20 % commercial, 30 % industrial process, 10 % comfort cooling (40 CFR 82.157 and 84.106).</summary>
public sealed class ApplianceDetailsTests
{
    [Theory]
    [InlineData("commercial-refrigeration", 25, true)]
    [InlineData("industrial-process", 25, false)]
    [InlineData("industrial-process", 35, true)]
    [InlineData("comfort-cooling", 15, true)]
    [InlineData("commercial-refrigeration", 15, false)]
    public void The_threshold_is_that_of_what_the_equipment_is_for(string use, double pounds, bool isOver)
    {
        var account = Account(use, Charge("u-1", 0, pounds, null));

        Assert.Equal(isOver, account!.Findings.Any(f => f.Key == "regulation.leak-rate-over"));
        Assert.Equal(!isOver, account.Findings.Any(f => f.Key == "regulation.leak-rate-within"));
    }

    [Fact]
    public void Where_the_use_is_not_on_record_what_it_was_taken_for_is_said()
    {
        Assert.Contains(Account(null, Charge("u-1", 0, 10, null))!.Findings, r => r.Key == "report.leak-use-assumed");
        Assert.DoesNotContain(Account("other", Charge("u-1", 0, 10, null))!.Findings, r => r.Key == "report.leak-use-assumed");
    }

    [Fact]
    public void A_first_charge_is_no_leak_and_what_follows_a_repair_is() =>
        // By hand: the 100 lb of the installation do not count, but their day does: 10 lb a hundred days later are 10/100 x 365/100 = 36.5 %.
        Assert.Equal(0.365, Annualised(Account("commercial-refrigeration", Charge("u-1", 0, 100, "new-installation"), Charge("u-2", 100, 10, "after-repair"))!), 3);

    [Fact]
    public void What_was_only_ever_a_first_charge_has_no_leak_rate() =>
        Assert.Null(Account("commercial-refrigeration", Charge("u-1", 0, 100, "new-installation")));

    private static double Annualised(LeakAccount account) => account.Rate.Parts.Single(p => p.Name == "annualised").Amount!.Value.Canonical;

    private static LeakAccount? Account(string? use, params RecordedUse[] uses)
    {
        var details = ImmutableSortedDictionary<string, string>.Empty;
        var asset = new Asset("rack", "Invented Market", "invented rack", use is null ? details : details.Add("appliance_use", use));
        return LeakAccount.Of(asset, Mass.FromPounds(100), RefrigerantLibrary.Find("R448A"), uses, LeakWork.None, UnitSystem.Us, new(2026, 12, 31));
    }

    private static RecordedUse Charge(string id, int day, double pounds, string? reason)
    {
        var grams = (long)Math.Round(pounds * 453.59237);
        return new($"visit of {id}", "rack", new(id, "INV-" + id, "supply", "charge", "R448A", 10_000, 90_000, 90_000 - grams, null)
        {
            At = Invented.Morning.AddDays(day),
            By = "Robin",
            Reason = reason,
        });
    }
}
