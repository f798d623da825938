using System.Collections.Concurrent;
using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.People;
using Assistant.Records.Signing;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Xunit.Abstractions;
using Stopwatch = System.Diagnostics.Stopwatch;

namespace Assistant.Channels.Tests.Interleavings;

/// <summary>
/// Three people on one visit in every order that five hundred seeds make of it: late, twice, and each while another is being answered.
/// The same seed gives the same log.
/// </summary>
public sealed class InterleavingTests(ITestOutputHelper output) : IAsyncLifetime
{
    private const int Seeds = 500;

    private readonly string folder = Directory.Exists("/dev/shm") ? Directory.CreateDirectory($"/dev/shm/coldwalk-{Guid.NewGuid():N}").FullName : Directory.CreateTempSubdirectory("coldwalk-").FullName;
    private readonly List<EventLog> logs = [];
    private VisitPeople joining = null!;

    public async Task InitializeAsync()
    {
        for (var program = 0; program < CrewScript.People.Length; program++)
        {
            logs.Add(await EventLog.OpenAsync(new SqliteRecords(Path.Combine(folder, "records.db"))));
        }

        joining = new PeopleService(logs[0], SigningKey.Open(folder), TimeProvider.System).Visits;
    }

    public async Task DisposeAsync()
    {
        foreach (var log in logs)
        {
            await log.DisposeAsync();
        }

        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task No_reading_is_lost_or_doubled_every_replica_comes_to_the_same_state_and_each_reply_goes_to_who_spoke()
    {
        var watch = Stopwatch.StartNew();
        var (readings, madeAgain, disputes, requests, lines) = (0, 0, 0, 0, 0);
        var failures = new ConcurrentQueue<string>();
        await Parallel.ForEachAsync(Enumerable.Range(1, Seeds), new ParallelOptions { MaxDegreeOfParallelism = 2 }, async (seed, cancellation) =>
        {
            try
            {
                using var call = new CrewCall(seed, "", logs, joining);
                await call.RunAsync();
                var log = await call.Log.ReadAsync(call.VisitId, cancellation);
                CrewChecks.EveryReadingIsOnRecordOnce(call.Answers, log);
                await CrewChecks.EachReplyGoesToWhoSpokeAsync(call);
                CrewChecks.EveryReplicaIsTheSame(seed, log, await call.StatesAsync());
                CrewChecks.StepsAreConfirmedOnSite(log);
                Interlocked.Add(ref readings, call.Answers.Count(a => a.Line.Value is not null));
                Interlocked.Add(ref madeAgain, call.MadeAgain);
                Interlocked.Add(ref disputes, log.OfType<ReadingsDiffer>().Count());
                Interlocked.Add(ref requests, log.OfType<RequestTold>().Count());
                Interlocked.Add(ref lines, call.Answers.Count);
            }
            catch (Exception failure)
            {
                failures.Enqueue($"seed {seed}: {failure.Message}");
            }
        });

        output.WriteLine(FormattableString.Invariant(
            $"{Seeds} interleavings in {watch.Elapsed.TotalSeconds:0.0} s: {lines} messages, {readings} readings, {madeAgain} turns made again, {disputes} differences asked about, {requests} wishes told"));
        Assert.True(failures.IsEmpty, $"{failures.Count} failed: {string.Join("\n", failures.Take(5))}");
        Assert.True(madeAgain > Seeds && disputes > Seeds / 10 && requests > 0, "The interleavings hardly interleave.");
    }

    [Theory]
    [InlineData(3)]
    [InlineData(77)]
    [InlineData(421)]
    public async Task The_same_seed_gives_the_same_log_and_the_same_replies(int seed)
    {
        var runs = new List<(string Log, string Replies)>();
        foreach (var run in new[] { "first ", "again " })
        {
            using var call = new CrewCall(seed, run, logs, joining);
            await call.RunAsync();
            var log = await call.Log.ReadAsync(call.VisitId);
            runs.Add((string.Join('\n', log.Select(e => JsonSerializer.Serialize(e))).Replace(run, "", StringComparison.Ordinal), string.Join('\n', call.Answers.Select(a => JsonSerializer.Serialize(a.Reply)))));
        }

        Assert.Equal(runs[0], runs[1]);
    }
}
