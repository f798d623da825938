using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Reports;
using Assistant.Records.Reports.Model;
using Assistant.Records.Reports.Sheet;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Tests.Reports;

/// <summary>
/// A year of one rack, invented from end to end: R448A, 100 lb, a cooler in the United States. Read from the logs of its visits; beside
/// each day stands the reckoning by hand (40 CFR 82.152, 84.106: over 20 %, repair within 30 days, follow-up test within 10).
/// </summary>
public abstract class LeakYearTests(Store store) : IAsyncLifetime
{
    private readonly ReportWords words = new(InventedVisit.Phrases);
    private TemporaryRecords records = null!;

    public async Task InitializeAsync()
    {
        records = await TemporaryRecords.OpenAsync(store);
        var details = ImmutableSortedDictionary<string, string>.Empty.Add("appliance_use", "commercial-refrigeration");
        await new AssetStore(records.Database).RecordAsync(new("rack", "Invented Market", "invented rack", details), Invented.Morning);
        await VisitAsync("2026-02-10", Charged("INV-1", 5));                          // first since 2026: 5/100 x 365/365 = 5 %
        await VisitAsync("2026-06-15", Charged("INV-2", 9));                          // 125 days later: 9/100 x 365/125 = 26.28 %, over 20 %
        await VisitAsync("2026-06-20", new LeakFound("the flare at the drier") { At = default, By = "Robin" }, Recovered("INV-3", 20), Judged("repair-choice", "repair-plan", "make-anew"), Finished("repair-choice"), Judged("pressure-hold", "nitrogen-hold", "holds"));
        await VisitAsync("2026-06-21", Judged("vacuum", "vacuum-decay", "tight"), Charged("INV-4", 20));   // what came out for the repair goes back
        await VisitAsync("2026-06-25", Chosen("tight-caps-off"), Chosen("tight-caps-on"), Judged("close-out", "final-readings", "on-target"));
        await VisitAsync("2026-12-05", Charged("INV-5", 10));                         // 173 days after 15 June: 10/100 x 365/173 = 21.1 %
    }

    public async Task DisposeAsync() => await records.DisposeAsync();

    [Theory]
    [InlineData("2026-02-10", "5 lb were added on 2026-02-10, to a full charge of 100 lb: 5 % a year by the annualising method, 5 % by the rolling", "within the threshold: 5 %", "Repair the leak")]
    [InlineData("2026-06-15", "26 % a year by the annualising method, 14 % by the rolling", "Repair the leak shown on 2026-06-15 by 2026-07-15", "Test the repair again")]
    [InlineData("2026-06-20", "26 % a year by the annualising method, 14 % by the rolling", "Test the repair again at normal running by 2026-06-30", "Repair the leak")]
    [InlineData("2026-06-21", "9 lb were added on 2026-06-15", "Test the repair again at normal running by 2026-06-30", "Repair the leak")]
    [InlineData("2026-06-25", "9 lb were added on 2026-06-15", "Inspect the whole appliance for leaks by 2026-12-31", "Test the repair again")]
    [InlineData("2026-12-05", "21 % a year by the annualising method, 10 % by the rolling", "10 lb / 100 lb x 365 / 173", "Test the repair again")]
    [InlineData("2026-12-05", "10 lb were added on 2026-12-05", "rolling 10 lb / 100 lb, all that was added since the repair was proven on 2026-06-25", "all that was added within 365 days")]
    [InlineData("2026-12-05", "10 lb were added on 2026-12-05", "The repair did not hold on 2026-12-05: a plan to retrofit or retire the appliance is due by 2027-01-04", "added before")]
    public async Task Each_visits_report_says_the_rate_and_what_is_still_to_be_done(string day, string rate, string says, string not)
    {
        var leak = await LeakAsync(day);

        Assert.Contains(rate, words.Say(leak.Rate, UnitSystem.Us), StringComparison.Ordinal);
        var said = string.Join("\n", leak.Findings.Prepend(leak.Workings).Select(f => words.Say(f, UnitSystem.Us)));
        Assert.Contains(says, said, StringComparison.Ordinal);
        Assert.DoesNotContain(not, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_one_method_says_and_the_other_does_not_stands_under_its_name()
    {
        var leak = await LeakAsync("2026-06-15");

        var said = leak.Findings.Select(f => words.Say(f, UnitSystem.Us)).ToList();
        var (annualising, rolling) = (said.FindIndex(s => s.StartsWith("By the annualising method", StringComparison.Ordinal)), said.FindIndex(s => s.StartsWith("By the rolling average", StringComparison.Ordinal)));
        Assert.InRange(said.FindIndex(s => s.StartsWith("The leak rate is over the threshold: 26 %", StringComparison.Ordinal)), annualising + 1, rolling - 1);
        Assert.InRange(said.FindIndex(s => s.StartsWith("The leak rate is within the threshold: 14 %", StringComparison.Ordinal)), rolling + 1, said.Count);
    }

    [Fact]
    public async Task The_repair_is_of_the_visit_it_was_done_on()
    {
        using var pictures = new PictureStore(records.Database);
        var reader = new VisitReportReader(records.Log, pictures);

        Assert.False((await reader.ReadAsync("2026-06-15"))!.IsLeakRepaired);
        Assert.True((await reader.ReadAsync("2026-06-20"))!.IsLeakRepaired);
        Assert.False((await reader.ReadAsync("2026-06-25"))!.IsLeakRepaired);
    }

    private async Task<LeakAccount> LeakAsync(string day)
    {
        using var pictures = new PictureStore(records.Database);
        return (await new VisitReportReader(records.Log, pictures).ReadAsync(day))!.Leak!;
    }

    private async Task VisitAsync(string day, params VisitEvent[] happened)
    {
        var morning = DateTimeOffset.Parse(day + "T09:00:00-07:00", CultureInfo.InvariantCulture);
        var opened = Invented.Opened("rack") with { At = morning };
        VisitEvent[] events =
        [
            opened,
            new FactTaken("refrigerant", null, null, "R448A", "record", null) { At = morning, By = "Robin" },
            new FactTaken("full_charge", 100, "lb", null, "record", null) { At = morning, By = "Robin" },
            .. happened.Select((e, i) => e with { At = morning.AddMinutes(10 + i) }),
        ];
        Assert.IsType<Appended>(await records.Log.AppendAsync(new(day, 0, events) { Opening = new(opened, "chat", day, Replaces: null) }));
    }

    private static CylinderUsed Charged(string tag, int pounds) => Used(tag, "supply", "charge", 40_000, 40_000 - Grams(pounds));

    private static CylinderUsed Recovered(string tag, int pounds) => Used(tag, "recovery", "recover", 10_000, 10_000 + Grams(pounds));

    private static CylinderUsed Used(string tag, string kind, string purpose, long before, long after) =>
        new("use of " + tag, tag, kind, purpose, "R448A", 5_900, before, after, null) { At = default, By = "Robin" };

    private static JudgementGiven Judged(string walk, string judgement, string outcome) => new(walk, "stop", judgement, outcome, "", []) { At = default, By = "Robin" };

    private static WalkFinished Finished(string walk) => new(walk) { At = default, By = "Robin" };

    private static StopChosen Chosen(string choice) => new("close-out", "stop", choice, "tight") { At = default, By = "Robin" };

    private static long Grams(int pounds) => (long)Math.Round(pounds * 453.59237);
}

public sealed class LeakYearTestsOnSqlite() : LeakYearTests(Store.Sqlite);

public sealed class LeakYearTestsOnPostgres() : LeakYearTests(Store.Postgres);
