using Assistant.Dialogue.Visits;
using Assistant.Records.Cylinders;
using Assistant.Records.Tests.Support;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Quantities;

namespace Assistant.Records.Tests.Cylinders;

public abstract class CylinderServiceTests(Store store)
{
    [Fact]
    public async Task A_use_is_an_event_of_the_visit_and_told_twice_it_counts_once()
    {
        await using var records = await WithVisitAsync();
        var service = new CylinderService(records.Log);

        var first = await service.RecordAsync("v-1", Charge("use-1", 14_200, 12_480));
        var again = await service.RecordAsync("v-1", Charge("use-1", 14_200, 12_480));

        Assert.True(first.IsRecorded);
        Assert.Empty(first.Remarks);
        Assert.True(again.WasThere);
        var used = Assert.Single((await records.Log.ReadAsync("v-1")).OfType<CylinderUsed>());
        Assert.Equal(("supply", "charge", 14_200, 12_480), (used.CylinderKind, used.Purpose, used.GrossBeforeGrams, used.GrossAfterGrams));
    }

    [Fact]
    public async Task The_balance_goes_on_across_visits_and_closes_to_the_gram()
    {
        await using var records = await WithVisitAsync();
        await records.Log.AppendAsync(Invented.FirstAppend("v-2", "c-2"));
        var service = new CylinderService(records.Log);
        await service.RecordAsync("v-1", Charge("use-1", 14_200, 12_480));
        await service.RecordAsync("v-2", Charge("use-2", 12_480, 12_000, hours: 24));
        await service.RecordAsync("v-2", Charge("use-3", 12_000, 11_960, hours: 25) with { Purpose = EntryPurpose.HoseLoss });

        var balances = (await new CylinderBookReader(records.Log).ReadAsync()).Ledger.Balances();

        var account = balances.Cylinders["INV-07"];
        Assert.True(balances.Closes);
        Assert.Equal((8_300, 2_200, 40, 6_060), (account.Opening.Value, account.Charged.Value, account.HoseLoss.Value, account.Remaining.Value));
    }

    [Fact]
    public async Task A_weight_that_does_not_follow_is_recorded_and_the_gap_is_named()
    {
        await using var records = await WithVisitAsync();
        var service = new CylinderService(records.Log);
        await service.RecordAsync("v-1", Charge("use-1", 14_200, 12_480));

        var result = await service.RecordAsync("v-1", Charge("use-2", 12_180, 12_000, hours: 2));

        Assert.True(result.IsRecorded);
        Assert.Contains("does not add up: 300 g went missing", InventedVisit.Phrases.Say(Assert.Single(result.Remarks), UnitSystem.Metric).Full, StringComparison.Ordinal);
    }

    // 50 lb of water (22 680 g) hold 0.8 * 22 680 g * the density of the liquid over 1000; no refrigerant in use is denser than 1.5.
    [Fact]
    public async Task An_over_full_recovery_cylinder_is_refused_with_the_limit_and_nothing_is_stored()
    {
        await using var records = await WithVisitAsync();

        var result = await new CylinderService(records.Log).RecordAsync("v-1", Recover("use-1", 12_000, 40_000));

        Assert.Equal("ledger.over-full", result.Refused!.Key);
        Assert.StartsWith("STOP: cylinder REC-1 would hold", InventedVisit.Phrases.Say(result.Refused, UnitSystem.Us).Full, StringComparison.Ordinal);
        Assert.Empty((await records.Log.ReadAsync("v-1")).OfType<CylinderUsed>());
    }

    [Theory]
    [InlineData(14_200, 5_000, "ledger.negative-contents")]
    [InlineData(12_480, 14_200, "ledger.wrong-direction")]
    public async Task Weights_that_can_not_be_are_refused(int before, int after, string key)
    {
        await using var records = await WithVisitAsync();

        var result = await new CylinderService(records.Log).RecordAsync("v-1", Charge("use-1", before, after));

        Assert.Equal(key, result.Refused!.Key);
        Assert.DoesNotContain('\n', InventedVisit.Phrases.Say(result.Refused, UnitSystem.Us).Full);
        Assert.Single(await records.Log.ReadAsync("v-1"));
    }

    [Fact]
    public async Task Another_tare_on_the_same_tag_is_refused()
    {
        await using var records = await WithVisitAsync();
        var service = new CylinderService(records.Log);
        await service.RecordAsync("v-1", Charge("use-1", 14_200, 12_480));

        var result = await service.RecordAsync("v-1", Charge("use-2", 12_480, 12_000, hours: 1) with { Tare = new(6_100), Tag = "inv-07" });

        Assert.Equal("ledger.tare-differs", result.Refused!.Key);
    }

    [Fact]
    public async Task A_fill_of_unknown_capacity_is_recorded_with_the_caution_that_it_was_not_judged()
    {
        await using var records = await WithVisitAsync();

        var result = await new CylinderService(records.Log).RecordAsync("v-1", Recover("use-1", 12_000, 14_000) with { WaterCapacity = null });

        Assert.Equal("ledger.fill-not-judged", Assert.Single(result.Remarks).Key);
    }

    [Fact]
    public async Task A_use_that_was_taken_back_does_not_count()
    {
        await using var records = await WithVisitAsync();
        await new CylinderService(records.Log).RecordAsync("v-1", Charge("use-1", 14_200, 12_480));
        await records.Log.AppendAsync(new("v-1", 2, [new EventWithdrawn(2) { At = Invented.Morning, By = "Robin" }]));

        Assert.Empty(await new CylinderBookReader(records.Log).UsesAsync());
    }

    private async Task<TemporaryRecords> WithVisitAsync()
    {
        var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v-1"));
        return records;
    }

    private static CylinderUse Charge(string id, int before, int after, int hours = 0) =>
        new(id, "INV-07", CylinderKind.Supply, EntryPurpose.Charge, "R448A", new(5_900), new(before), new(after), null, "Robin", Invented.Morning.AddHours(hours));

    private static CylinderUse Recover(string id, int before, int after) =>
        new(id, "REC-1", CylinderKind.Recovery, EntryPurpose.Recover, "R404A", new(12_000), new(before), new(after), new(22_680), "Robin", Invented.Morning);
}

public sealed class CylinderServiceTestsOnSqlite() : CylinderServiceTests(Store.Sqlite);

public sealed class CylinderServiceTestsOnPostgres() : CylinderServiceTests(Store.Postgres);
