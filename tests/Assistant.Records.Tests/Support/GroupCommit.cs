using System.Diagnostics;
using Assistant.Records.Conversations;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Storage.Sqlite;
using EventLog = Assistant.Records.Log.EventLog;

namespace Assistant.Records.Tests.Support;

/// <summary>
/// What it gives that appends which wait together share a commit: durable turns a second of many conversations at once, against one event a
/// commit, on both stores, each waiting for the disk.
/// </summary>
internal static class GroupCommit
{
    private static readonly TimeSpan Measured = TimeSpan.FromSeconds(5);

    public static async Task RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;
        await using (var cluster = await PostgresCluster.StartNewAsync())
        {
            await TestDatabases.RunAsync(cluster.ConnectionTo("postgres"), "CREATE DATABASE coldwalk");
            await MeasureAsync("SQLite", new SqliteRecords(Path.Combine(folder, "records.db")));
            await MeasureAsync("PostgreSQL", PostgresRecords.Of(cluster.ConnectionTo("coldwalk")));
        }

        Directory.Delete(folder, recursive: true);
    }

    private static async Task MeasureAsync(string name, IRecordsDatabase database)
    {
        await using var log = await EventLog.OpenAsync(database);
        await TurnsAsync(log, "warm-up", 8, TimeSpan.FromSeconds(1));
        var single = await SinglesAsync(log);
        Console.WriteLine($"{name}: {single:0} events a second, one a commit");
        foreach (var conversations in new[] { 1, 8, 64 })
        {
            var before = log.Statistics;
            var rate = await TurnsAsync(log, $"{conversations}", conversations, Measured);
            var (commits, appends) = (log.Statistics.Commits - before.Commits, log.Statistics.Appends - before.Appends);
            Console.WriteLine($"{name}: {rate:0} durable turns a second of {conversations} conversations, {rate / single:0.0} times that; {(double)appends / commits:0.0} turns a commit");
        }
    }

    private static async Task<double> SinglesAsync(EventLog log)
    {
        await log.AppendAsync(Invented.FirstAppend("single", "single"));
        var (watch, version) = (Stopwatch.StartNew(), 1);
        while (watch.Elapsed < Measured)
        {
            await log.AppendAsync(new("single", version++, [Invented.Heard("38")]));
        }

        return (version - 1) / watch.Elapsed.TotalSeconds;
    }

    private static async Task<double> TurnsAsync(EventLog log, string run, int conversations, TimeSpan time)
    {
        using var service = new ConversationService(log, new CountingEngine());
        var (watch, turns) = (Stopwatch.StartNew(), 0);
        await Task.WhenAll(Enumerable.Range(0, conversations).Select(async c =>
        {
            for (var i = 0; watch.Elapsed < time; i++)
            {
                await service.HandleAsync(Invented.Message($"{run}-{c}-{i}", conversation: $"{run}-{c}"));
                Interlocked.Increment(ref turns);
            }
        }));
        return turns / watch.Elapsed.TotalSeconds;
    }
}
