using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Assets;

public abstract class SecondVisitTests(Store store)
{
    private static readonly Asset Cooler = new("cooler", "Invented Diner", "walk-in cooler", ImmutableSortedDictionary<string, string>.Empty
        .Add("refrigerant", "R404A").Add("full_charge", "12 lb").Add("valve_body", "invented 2"));

    [Fact]
    public async Task A_second_visit_opens_with_what_the_record_knows_and_what_the_first_one_found()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        var first = await service.OpenVisitAsync(Request("c-1"));
        await records.Log.AppendAsync(new(first.VisitId, 1,
        [
            Word("refrigerant", "R448A"), Number("design_condenser_split", 25, "degF"), Number("box_temperature", 51, "degF"),
        ]));

        var second = await service.OpenVisitAsync(Request("c-2"));

        var opened = Assert.IsType<VisitOpened>((await records.Log.ReadAsync(second.VisitId))[0]);
        Assert.Equal(("Invented Diner", "cooler"), (opened.Site, opened.AssetId));
        Assert.Equal(
            [("design_condenser_split", "25 degF"), ("full_charge", "12 lb"), ("refrigerant", "R448A")],
            opened.KnownFacts.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => (f.Key, f.Value)));
    }

    [Fact]
    public async Task A_second_visit_is_told_how_the_first_one_ended_and_where_it_leaked()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        var first = await service.OpenVisitAsync(Request("c-1"));
        await records.Log.AppendAsync(new(first.VisitId, 1,
        [
            new VerdictGiven("undercharge", "established", "Short of refrigerant.", []) { At = Invented.Morning, By = "Robin" },
            new LeakFound("flare nut") { At = Invented.Morning, By = "Robin" },
            new FaultMended("undercharge", []) { At = Invented.Morning, By = "Robin" },
            new FollowUpNoted(new(2026, 2, 12), "check the drier") { At = Invented.Morning, By = "Robin" },
        ]));

        var second = await service.OpenVisitAsync(Request("c-2", days: 30));

        var opened = Assert.IsType<VisitOpened>((await records.Log.ReadAsync(second.VisitId))[0]);
        Assert.Equal("walk-in cooler", opened.Unit);
        Assert.Equal((new DateOnly(2026, 1, 12), "undercharge", "established"), (opened.Before!.On, opened.Before.Fault, opened.Before.Standing));
        Assert.Equal(["undercharge"], opened.Before.Mended.ToArray());
        Assert.Equal([new DateOnly(2026, 2, 12)], opened.Before.FollowUps.ToArray());
        Assert.Equal([new EarlierLeak("flare nut", new(2026, 1, 12))], opened.Before.Leaks.ToArray());
    }

    [Fact]
    public async Task A_nameplate_value_that_was_taken_back_is_gone_from_the_record()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        var visit = await service.OpenVisitAsync(Request("c-1"));
        await records.Log.AppendAsync(new(visit.VisitId, 1, [Word("refrigerant", "R22")]));
        await records.Log.AppendAsync(new(visit.VisitId, 2, [new EventWithdrawn(2) { At = Invented.Morning, By = "Robin" }]));

        Assert.Equal("R404A", (await new AssetStore(records.Database).FindAsync("cooler"))!.Details["refrigerant"]);
    }

    [Fact]
    public async Task The_history_tells_what_is_known_and_what_changed()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        var first = await service.OpenVisitAsync(Request("c-1"));
        await records.Log.AppendAsync(new(first.VisitId, 1,
        [
            Number("suction_pressure", 14, "psig"), Number("full_charge", 13, "lb"), Number("box_temperature", 51, "degF"),
            new VerdictGiven("undercharge", "established", "Short of refrigerant.", []) { At = Invented.Morning, By = "Robin" },
            new FollowUpNoted(new(2026, 2, 12), "check the drier") { At = Invented.Morning, By = "Robin" },
            new VisitClosed("repaired") { At = Invented.Morning.AddHours(2), By = "Robin" },
        ]));
        var second = await service.OpenVisitAsync(Request("c-2", days: 30));
        await records.Log.AppendAsync(new(second.VisitId, 1, [Number("suction_pressure", 41, "psig"), Number("box_temperature", 51, "degF")]));

        var history = await new AssetHistoryReader(records.Log).ReadAsync("cooler");

        Assert.Equal("13 lb", history!.Asset.Details["full_charge"]);
        var change = Assert.Single(history.Changes, c => c.Before is not null);
        Assert.Equal(("full_charge", "12 lb", "13 lb", first.VisitId), (change.Name, change.Before, change.Text, change.VisitId));
        Assert.Equal([second.VisitId, first.VisitId], history.Visits.Select(v => v.VisitId));
        Assert.Equal("undercharge", history.Visits[1].Verdict!.Fault);
        Assert.Equal("check the drier", Assert.Single(history.Visits[1].FollowUps).What);
        Assert.Equal([14, 41], history.ReadingsOf("suction_pressure").Select(r => r.Value));
        var (then, now) = Assert.Single(history.ChangedSinceLastVisit());
        Assert.Equal(("suction_pressure", 14, 41), (now.Fact, then.Value, now.Value));
    }

    [Fact]
    public async Task A_new_visit_opens_with_the_valve_on_record_and_with_what_was_set_or_recorded_otherwise()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        await AppendAsync(await service.OpenVisitAsync(Request("c-1")), Number("setpoint", 36, "degF"));
        await AppendAsync(await service.OpenVisitAsync(Request("c-2", days: 30)), Number("setpoint", 38, "degF"));
        await new AssetStore(records.Database).RecordAsync(Cooler with { Details = Cooler.Details.SetItem("valve_body", "invented 3") }, Invented.Morning.AddDays(40));

        var third = await service.OpenVisitAsync(Request("c-3", days: 60));

        var opened = Assert.IsType<VisitOpened>((await records.Log.ReadAsync(third.VisitId))[0]);
        Assert.Equal("invented 3", opened.Details!["valve_body"]);
        Assert.Equal([new DetailChanged("valve_body", "invented 2", "invented 3"), new DetailChanged("setpoint", "36 degF", "38 degF")], opened.Changed!);

        async Task AppendAsync(OpenedVisit visit, FactTaken taken) => await records.Log.AppendAsync(new(visit.VisitId, 1, [taken]));
    }

    [Fact]
    public async Task A_new_visit_knows_the_cylinders_as_the_last_ones_left_them()
    {
        await using var records = await WithCoolerAsync();
        using var service = new ConversationService(records.Log, new CountingEngine());
        var first = await service.OpenVisitAsync(Request("c-1"));
        var use = new CylinderUsed("u-1", "14", "supply", "charge", "R404A", 12_247, 21_943, 19_561, null) { At = Invented.Morning, By = "Robin" };
        await records.Log.AppendAsync(new(first.VisitId, 1,
        [
            use,
            use with { EntryId = "u-2", GrossAfterGrams = 19_618, Replaces = 2, At = Invented.Morning },
            use with { EntryId = "u-3", Purpose = "hose-loss", GrossBeforeGrams = 19_618, At = Invented.Morning },
        ]));

        var second = await service.OpenVisitAsync(Request("c-2", days: 1));

        var opened = Assert.IsType<VisitOpened>((await records.Log.ReadAsync(second.VisitId))[0]);
        Assert.Equal([new KnownCylinder("14", "supply", "R404A", 12_247, 19_561, null)], opened.Cylinders!);
    }

    [Fact]
    public async Task A_detail_recorded_again_unchanged_adds_nothing_to_its_history()
    {
        await using var records = await WithCoolerAsync();
        await new AssetStore(records.Database).RecordAsync(Cooler with { Details = Cooler.Details.SetItem("full_charge", "14 lb") }, Invented.Morning);

        var history = await new AssetHistoryReader(records.Log).ReadAsync("cooler");

        Assert.Equal(4, history!.Changes.Length);
        Assert.Equal(("12 lb", "14 lb"), (history.Changes[3].Before, history.Changes[3].Text));
    }

    private async Task<TemporaryRecords> WithCoolerAsync()
    {
        var records = await TemporaryRecords.OpenAsync(store);
        await new AssetStore(records.Database).RecordAsync(Cooler, Invented.Morning);
        return records;
    }

    private static VisitRequest Request(string conversation, int days = 0) =>
        new("chat", conversation, null, "cooler", default, "Robin", Invented.Morning.AddDays(days));

    private static FactTaken Word(string fact, string word) => new(fact, null, null, word, "record", null) { At = Invented.Morning, By = "Robin" };

    private static FactTaken Number(string fact, double value, string unit) => new(fact, value, unit, null, "unit", null) { At = Invented.Morning, By = "Robin" };
}

public sealed class SecondVisitTestsOnSqlite() : SecondVisitTests(Store.Sqlite);

public sealed class SecondVisitTestsOnPostgres() : SecondVisitTests(Store.Postgres);
