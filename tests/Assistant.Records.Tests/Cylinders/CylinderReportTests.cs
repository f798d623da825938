using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Cylinders;
using Assistant.Records.Pictures;
using Assistant.Records.Reports;
using Assistant.Records.Reports.Html;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Ledgers;

namespace Assistant.Records.Tests.Cylinders;

public class CylinderReportTests
{
    // By hand: 10 lb into a full charge of 100 lb as the first addition is 10 % a year by both methods.
    [Fact]
    public async Task The_report_tells_the_cylinders_account_and_the_leak_rate_and_ends_with_the_reminder()
    {
        var html = await ReportAsync("100 lb", 100, grams: 4_536);

        Assert.Contains("The cylinders over all visits", html, StringComparison.Ordinal);
        Assert.Contains("Every weight follows from the one before it.", html, StringComparison.Ordinal);
        Assert.Contains("10 % a year by the annualising method, 10 % by the rolling average", html.Replace("10%", "10 %", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Check the current text and your authority", html, StringComparison.Ordinal);
        Assert.Contains("The leak rate is within the threshold", html, StringComparison.Ordinal);
    }

    // By hand: 30 lb into 100 lb is 30 %; the US threshold for commercial refrigeration is 20 % (40 CFR 82.157 and 84.106).
    [Fact]
    public async Task A_rate_over_the_threshold_is_said_with_the_date_to_repair_by()
    {
        var html = await ReportAsync("100 lb", 100, grams: 13_608);

        Assert.Contains("The leak rate is over the threshold", html, StringComparison.Ordinal);
        Assert.Contains("Repair the leak shown on 2026-01-12 by 2026-02-11", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_charge_below_every_rule_has_its_rate_and_still_the_reminder()
    {
        var html = await ReportAsync("4 lb", 4, grams: 454);

        Assert.Contains("by the annualising method", html, StringComparison.Ordinal);
        Assert.Contains("that is no proof that none does", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_known_charge_no_rate_is_made_up()
    {
        Assert.DoesNotContain("annualising", await ReportAsync("unknown", null, grams: 454), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_went_by_the_scale_is_not_told_a_second_time_by_its_running_sum()
    {
        var html = await ReportAsync("100 lb", 100, grams: 4_536);

        Assert.Contains("INV-07", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Refrigerant added:", html, StringComparison.Ordinal);
    }

    private static async Task<string> ReportAsync(string charge, double? pounds, int grams)
    {
        await using var records = await TemporaryRecords.OpenAsync();
        await new AssetStore(records.Database).RecordAsync(
            new("rack", "Invented Market", "invented rack", ImmutableSortedDictionary<string, string>.Empty.Add("full_charge", charge)), Invented.Morning);
        await records.Log.AppendAsync(Invented.FirstAppend("v-1", assetId: "rack"));
        VisitEvent[] known =
        [
            new FactTaken("refrigerant", null, null, "R448A", "record", null) { At = Invented.Morning, By = "Robin" },
            new FactTaken("charge_added", 10, "lb", null, "scale", null) { At = Invented.Morning, By = "Robin" },
            .. pounds is { } value ? [new FactTaken("full_charge", value, "lb", null, "record", null) { At = Invented.Morning, By = "Robin" }] : Array.Empty<VisitEvent>(),
        ];
        await records.Log.AppendAsync(new("v-1", 1, known));
        await new CylinderService(records.Log).RecordAsync(
            "v-1", new("use-1", "INV-07", CylinderKind.Supply, EntryPurpose.Charge, "R448A", new(5_900), new(30_000), new(30_000 - grams), null, "Robin", Invented.Morning.AddHours(1)));
        using var pictures = new PictureStore(records.Database);
        var report = await new VisitReportReader(records.Log, pictures).ReadAsync("v-1");
        return HtmlReport.Write(new SheetWriter(InventedVisit.Phrases).Write(report!));
    }
}
