using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Net.ServerSentEvents;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Texts;
using Assistant.Records.Tests.Support;
using Npgsql;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>Two programs on one PostgreSQL as the page sees them. <c>COLDWALK_GONE_SECONDS</c> makes the database's absence longer.</summary>
[Collection("nodes")]
public sealed class TwoServersTests(ITestOutputHelper output) : IAsyncLifetime, IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-two-").FullName;
    private readonly ChaosLedger ledger = new();
    private readonly List<ChaosNode> nodes = [];
    private readonly HttpClient client = new();
    private PostgresCluster cluster = null!;

    public async Task InitializeAsync()
    {
        cluster = await PostgresCluster.StartNewAsync();
        await using (var line = new NpgsqlConnection($"{cluster.ConnectionTo("postgres")};Pooling=false"))
        {
            await line.OpenAsync();
            await using var create = new NpgsqlCommand("CREATE DATABASE coldwalk", line);
            await create.ExecuteNonQueryAsync();
        }

        var ports = new Ports(2);
        var environment = new Dictionary<string, string> { ["COLDWALK_STORE"] = cluster.ConnectionTo("coldwalk") };
        nodes.AddRange(Enumerable.Range(1, 2).Select(n => new ChaosNode($"node {n}", ports.Take(), environment, folder, ledger, new Random(n))));
        await Task.WhenAll(nodes.Select(n => n.StartAsync()));
    }

    public async Task DisposeAsync()
    {
        nodes.ForEach(n => n.Dispose());
        await cluster.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    public void Dispose() => client.Dispose();

    [Fact]
    public async Task What_is_said_through_one_is_seen_through_the_other_at_once()
    {
        await PostAsync(0, "api/visits", new { id = "two-servers-1", demo = true });
        using var stream = await client.GetStreamAsync(new Uri(nodes[1].Address, "api/visits/two-servers-1/events"));
        await using var entries = SseParser.Create(stream).EnumerateAsync().GetAsyncEnumerator();
        await NextAsync(entries, "visit");
        List<double> delays = [];
        for (var turn = 0; turn < 10; turn++)
        {
            await PostAsync(0, "api/visits/two-servers-1/messages", new { id = $"two-servers-1-{turn:000}", by = "kim", text = "why" });
            var watch = Stopwatch.StartNew();
            var entry = JsonNode.Parse(await NextAsync(entries, "turn"))!;
            Assert.Equal($"two-servers-1-{turn:000}", (string?)entry["id"]);
            delays.Add(watch.Elapsed.TotalMilliseconds);
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seen through the other node after {delays.Order().ElementAt(5):0} ms in the middle, {delays.Max():0} ms at the most"));

        // Without the news it would be seen when the watcher looks by itself, every five seconds.
        Assert.InRange(delays.Order().ElementAt(5), 0, 2_000);
    }

    [Fact]
    public async Task While_the_database_is_gone_one_line_says_so_and_after_it_the_talk_goes_on_with_nothing_lost()
    {
        await PostAsync(0, "api/visits", new { id = "two-servers-2", demo = true });
        var before = await PostAsync(0, "api/visits/two-servers-2/messages", new { id = "two-servers-2-000", by = "kim", text = "ok" });
        var gone = TimeSpan.FromSeconds(int.Parse(Environment.GetEnvironmentVariable("COLDWALK_GONE_SECONDS") ?? "3", CultureInfo.InvariantCulture));

        await cluster.StopAsync();
        var (watch, refused, longest) = (Stopwatch.StartNew(), 0, TimeSpan.Zero);
        do
        {
            var asked = watch.Elapsed;
            using var response = await client.PostAsJsonAsync(new Uri(nodes[refused % 2].Address, "api/visits/two-servers-2/messages"), new { id = "two-servers-2-001", by = "kim", text = "9" });
            var line = (string)(await response.Content.ReadFromJsonAsync<JsonNode>())!["error"]!;
            Assert.Equal(HttpStatusCode.ServiceUnavailable, response.StatusCode);
            Assert.EndsWith("does not answer just now. Say it again in a moment: what was stored is kept, and nothing is taken twice.", line, StringComparison.Ordinal);
            longest = TimeSpan.FromTicks(Math.Max(longest.Ticks, (watch.Elapsed - asked).Ticks));
            refused++;
            await Task.Delay(250);
        }
        while (watch.Elapsed < gone);

        await cluster.StartAsync();
        var after = await PostAsync(1, "api/visits/two-servers-2/messages", new { id = "two-servers-2-001", by = "kim", text = "9" });
        var again = await PostAsync(0, "api/visits/two-servers-2/messages", new { id = "two-servers-2-000", by = "kim", text = "ok" });
        Assert.Equal("box_temperature_check", (string?)after["reply"]!["asked"]);
        Assert.Equal(before["reply"]!.ToJsonString(), again["reply"]!.ToJsonString());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"gone for {gone.TotalSeconds:0} s: {refused} messages refused in one line, the slowest after {longest.TotalSeconds:0.0} s; taken at once when it was back"));
    }

    private async Task<JsonNode> PostAsync(int node, string path, object body)
    {
        using var response = await client.PostAsJsonAsync(new Uri(nodes[node].Address, path), body);
        Assert.True(response.IsSuccessStatusCode, await response.Content.ReadAsStringAsync());
        return (await response.Content.ReadFromJsonAsync<JsonNode>())!;
    }

    private static async Task<string> NextAsync(IAsyncEnumerator<SseItem<string>> entries, string kind)
    {
        while (await entries.MoveNextAsync())
        {
            if (entries.Current.EventType == kind)
            {
                return entries.Current.Data;
            }
        }

        throw new InvalidOperationException("The stream ended.");
    }
}
