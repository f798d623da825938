using Assistant.EndToEnd.Tests.Texts;
using Assistant.Records.Log;
using Assistant.Records.People;
using Assistant.Records.Signing;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Tests.Support;
using Npgsql;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>
/// Two nodes on one PostgreSQL and technicians on the page and by text, while the nodes are killed at random and PostgreSQL is restarted
/// twice: once in order, once as after a power cut. The kills follow the seed; what they meet depends on the machine.
/// </summary>
internal sealed class ChaosRun(int technicians, TimeSpan time, int seed) : IAsyncDisposable
{
    private const int Nodes = 2;
    private const string Firm = "Invented Refrigeration";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-chaos-").FullName;
    private readonly Ports ports = new(Nodes + 1);
    private readonly List<ChaosNode> nodes = [];
    private PostgresCluster? cluster;
    private ChaosNodes? balancer;

    public ChaosLedger Ledger { get; } = new();

    public ChaosGateway Gateway { get; private set; } = null!;

    public EventLog Log { get; private set; } = null!;

    public IReadOnlyList<PageTechnician> OnPage { get; private set; } = [];

    public IReadOnlyList<TextTechnician> ByText { get; private set; } = [];

    public int Kills => nodes.Sum(n => n.Kills);

    public async Task PlayAsync()
    {
        await SetUpAsync();
        using var over = new CancellationTokenSource(time);
        var (shortest, longest) = (TimeSpan.FromSeconds(Math.Min(10, time.TotalSeconds / 8)), TimeSpan.FromSeconds(Math.Min(30, time.TotalSeconds / 3)));
        var torment = nodes.Select(n => n.TormentAsync(shortest, longest, over.Token));
        var talk = OnPage.Select(t => t.TalkAsync(over.Token)).Concat(ByText.Select(t => t.TalkAsync(over.Token)));
        await Task.WhenAll([.. torment, .. talk, RestartAsync(over.Token)]);

        // What was still on its way when the last technician fell silent.
        await Task.Delay(TimeSpan.FromSeconds(2));

        // This process's own connections were cut as well, and nobody has used them since.
        NpgsqlConnection.ClearAllPools();
    }

    public async ValueTask DisposeAsync()
    {
        nodes.ForEach(n => n.Dispose());
        await (Gateway?.DisposeAsync() ?? ValueTask.CompletedTask);
        balancer?.Dispose();
        await (Log?.DisposeAsync() ?? ValueTask.CompletedTask);
        NpgsqlConnection.ClearAllPools();
        await (cluster?.DisposeAsync() ?? ValueTask.CompletedTask);
        Directory.Delete(folder, recursive: true);
    }

    private async Task SetUpAsync()
    {
        cluster = await PostgresCluster.StartNewAsync();
        await using (var line = new NpgsqlConnection($"{cluster.ConnectionTo("postgres")};Pooling=false"))
        {
            await line.OpenAsync();
            await using var create = new NpgsqlCommand("CREATE DATABASE coldwalk", line);
            await create.ExecuteNonQueryAsync();
        }

        Log = await EventLog.OpenAsync(PostgresRecords.Of(cluster.ConnectionTo("coldwalk")));
        var gatewayPort = ports.Take();
        var environment = ChaosGateway.Environment(gatewayPort);
        environment["COLDWALK_STORE"] = cluster.ConnectionTo("coldwalk");
        for (var n = 0; n < Nodes; n++)
        {
            nodes.Add(new($"node {n + 1}", ports.Take(), environment, DataFolder(n), Ledger, new Random(seed + n)));
        }

        balancer = new(nodes, Ledger);
        Gateway = new(gatewayPort, balancer);
        var phones = await EnrolAsync(technicians / 4);
        ByText = [.. phones.Select((number, i) => new TextTechnician(number, balancer, Gateway, Ledger, seed + 1000 + i))];
        OnPage = [.. Enumerable.Range(0, technicians - phones.Count).Select(i => new PageTechnician(i, balancer, Ledger, seed + 2000 + i))];
        await Task.WhenAll(nodes.Select(n => n.StartAsync()));
    }

    // Nodes share nothing but the database and the key that signs.
    private string DataFolder(int node)
    {
        var own = Directory.CreateDirectory(Path.Combine(folder, $"node-{node}")).FullName;
        SigningKey.Open(folder);
        File.Copy(Path.Combine(folder, "signing.key"), Path.Combine(own, "signing.key"));
        return own;
    }

    private async Task<List<string>> EnrolAsync(int count)
    {
        var people = new PeopleService(Log, SigningKey.Open(folder), TimeProvider.System);
        var firm = await people.SetUpAsync(Firm);
        List<string> numbers = [];
        for (var i = 0; i < count; i++)
        {
            var person = await people.AddAsync(firm.Id, $"Invented {i}", PersonRoles.OnSite);
            numbers.Add($"+15550{i:000}");
            Assert.IsType<Enrolled>(await people.Enrolment.EnrolAsync("sms", numbers[i], (await people.Enrolment.IssueAsync(person)).Code));
        }

        return numbers;
    }

    private async Task RestartAsync(CancellationToken over)
    {
        foreach (var atOnce in new[] { false, true })
        {
            await Task.Delay(time / 3, over);
            Ledger.Note(atOnce ? "PostgreSQL cut off" : "PostgreSQL stopped");
            await cluster!.StopAsync(atOnce);
            await Task.Delay(TimeSpan.FromSeconds(1), CancellationToken.None);
            await cluster.StartAsync();
            Ledger.Note("PostgreSQL is back");
        }
    }
}
