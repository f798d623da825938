using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Records.Reports.Model;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Refrigerants;
using UnitsNet;
using UnitSystem = Assistant.Trade.Quantities.UnitSystem;

namespace Assistant.Records.Tests.Reports;

/// <summary>Both leak rates beside their reckoning by hand. Definitions: 40 CFR 82.152.</summary>
public class LeakAccountTests
{
    private static readonly Asset Rack = new("rack", "Invented Market", "invented rack", ImmutableSortedDictionary<string, string>.Empty);

    [Theory]
    // The first addition counts as a year: 10/100 x 365/365 = 10 %; all within the year: 10/100.
    [InlineData("2026-03-01 10", "10 % a year by the annualising method, 10 % by the rolling", "10 lb / 100 lb x 365 / 365", "rolling 10 lb / 100 lb")]
    // 100 days later 9 lb more: 9/100 x 365/100 = 32.85 %; 5 + 9 in the year: 14/100.
    [InlineData("2026-03-01 5, 2026-06-09 9", "33 % a year by the annualising method, 14 % by the rolling", "9 lb / 100 lb x 365 / 100", "rolling 14 lb / 100 lb")]
    // 400 days later: never more than 365 in the method: 10/100; what was added 400 days ago is out of the year: 10/100.
    [InlineData("2025-05-05 5, 2026-06-09 10", "10 % a year by the annualising method, 10 % by the rolling", "10 lb / 100 lb x 365 / 365", "rolling 10 lb / 100 lb")]
    public void The_rates_are_those_reckoned_by_hand_and_the_reckoning_is_shown(string additions, string rates, string annualising, string rolling)
    {
        var uses = additions.Split(", ").Select((a, i) => Use(i, DateOnly.Parse(a[..10], System.Globalization.CultureInfo.InvariantCulture), int.Parse(a[11..], System.Globalization.CultureInfo.InvariantCulture)));

        var account = LeakAccount.Of(Rack, Mass.FromPounds(100), RefrigerantLibrary.Find("R448A"), uses, LeakWork.None, UnitSystem.Us, new(2026, 12, 31))!;

        var words = new ReportWords(InventedVisit.Phrases);
        Assert.Contains(rates, words.Say(account.Rate, UnitSystem.Us), StringComparison.Ordinal);
        Assert.Contains(annualising, words.Say(account.Workings, UnitSystem.Us), StringComparison.Ordinal);
        Assert.Contains(rolling, words.Say(account.Workings, UnitSystem.Us), StringComparison.Ordinal);
        Assert.All(account.Reminders, r => Assert.Contains("heck the current text and your authority", words.Say(r, UnitSystem.Us), StringComparison.Ordinal));
        Assert.NotEmpty(account.Reminders);
    }

    private static RecordedUse Use(int number, DateOnly on, int pounds) => new(
        $"v-{number}", "rack",
        new CylinderUsed($"use-{number}", $"INV-{number}", "supply", "charge", "R448A", 5_900, 40_000, 40_000 - (long)Math.Round(pounds * 453.59237), null)
        {
            At = new(on.ToDateTime(new(10, 0)), TimeSpan.Zero),
            By = "Robin",
        });
}
