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
    private static readonly TimeSpan Measured = TimeSpan.FromSeconds(2);

    private const int Rounds = 8;

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

    // By turns, as a machine that others use is now quicker and now slower.
    private static async Task MeasureAsync(string name, IRecordsDatabase database)
    {
        await using var log = await EventLog.OpenAsync(database);
        await SinglesAsync(log, "warm-up");
        await TurnsAsync(log, "warm-up", 64, Measured);
        int[] atOnce = [1, 8, 64];
        var single = new List<double>();
        var rates = atOnce.ToDictionary(c => c, _ => new List<double>());
        var shared = atOnce.ToDictionary(c => c, _ => (Commits: 0L, Appends: 0L));
        for (var round = 0; round < Rounds; round++)
        {
            single.Add(await SinglesAsync(log, $"single-{round}"));
            foreach (var conversations in atOnce)
            {
                var before = log.Statistics;
                rates[conversations].Add(await TurnsAsync(log, $"{round}-{conversations}", conversations, Measured));
                var (commits, appends) = shared[conversations];
                shared[conversations] = (commits + log.Statistics.Commits - before.Commits, appends + log.Statistics.Appends - before.Appends);
            }
        }

        Console.WriteLine($"{name}: {single.Average():0} events a second, one a commit");
        foreach (var (conversations, rate) in rates)
        {
            Console.WriteLine(
                $"{name}: {rate.Average():0} durable turns a second of {conversations} conversations, {rate.Average() / single.Average():0.0} times that "
                + $"(by round {string.Join(", ", rate.Zip(single, (r, s) => $"{r / s:0.0}"))}); {(double)shared[conversations].Appends / shared[conversations].Commits:0.0} turns a commit");
        }
    }

    private static async Task<double> SinglesAsync(EventLog log, string visit)
    {
        await log.AppendAsync(Invented.FirstAppend(visit, visit));
        var (watch, version) = (Stopwatch.StartNew(), 1);
        while (watch.Elapsed < Measured)
        {
            await log.AppendAsync(new(visit, version++, [Invented.Heard("38")]));
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
