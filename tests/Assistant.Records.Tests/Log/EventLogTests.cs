using Assistant.Records.Log;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Log;

public abstract class EventLogTests(Store store)
{
    [Fact]
    public async Task Events_made_on_an_older_version_are_a_conflict_and_change_nothing()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));

        Assert.Equal(new Appended(2), await records.Log.AppendAsync(new("v", 1, [Invented.Heard("first")])));
        Assert.IsType<Conflict>(await records.Log.AppendAsync(new("v", 1, [Invented.Heard("late")])));
        Assert.Equal(2, (await records.Log.ReadAsync("v")).Length);
    }

    [Fact]
    public async Task Of_many_appends_on_one_version_at_once_exactly_one_is_stored()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await records.Log.AppendAsync(Invented.FirstAppend("v"));

        var results = await Task.WhenAll(Enumerable.Range(0, 50).Select(i => records.Log.AppendAsync(new("v", 1, [Invented.Heard($"{i}")]))));

        Assert.Single(results, r => r is Appended);
        Assert.Equal(49, results.Count(r => r is Conflict));
    }

    [Fact]
    public async Task Appends_that_wait_together_share_a_commit()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);

        await Task.WhenAll(Enumerable.Range(0, 500).Select(i => records.Log.AppendAsync(Invented.FirstAppend($"v-{i}", $"c-{i}"))));

        var statistics = records.Log.Statistics;
        Assert.Equal(500, statistics.Appends);
        Assert.InRange(statistics.Commits, 1, 50);
    }

    [Fact]
    public async Task A_spoilt_append_does_not_take_down_those_that_wait_with_it()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var good = Enumerable.Range(0, 20).Select(i => records.Log.AppendAsync(Invented.FirstAppend($"v-{i}", $"c-{i}"))).ToList();
        var spoilt = records.Log.AppendAsync(Invented.FirstAppend("spoilt", "c-spoilt", assetId: "no-such-asset"));
        good.AddRange(Enumerable.Range(20, 20).Select(i => records.Log.AppendAsync(Invented.FirstAppend($"v-{i}", $"c-{i}"))));

        Assert.All(await Task.WhenAll(good), r => Assert.IsType<Appended>(r));
        await Assert.ThrowsAnyAsync<Exception>(() => spoilt);
    }
}

public sealed class EventLogTestsOnSqlite() : EventLogTests(Store.Sqlite);

public sealed class EventLogTestsOnPostgres() : EventLogTests(Store.Postgres);
