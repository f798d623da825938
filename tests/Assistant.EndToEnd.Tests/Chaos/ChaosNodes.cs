using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>Stands for a balancer and for a page that does not give up: a call goes to either node, and again until it is answered.</summary>
internal sealed class ChaosNodes(IReadOnlyList<ChaosNode> nodes, ChaosLedger ledger) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly HttpClient client = new(new SocketsHttpHandler { ConnectTimeout = TimeSpan.FromSeconds(2) }) { Timeout = TimeSpan.FromSeconds(20) };

    public Task<JsonNode> PostAsync(string path, object body, Random random) => CallAsync(
        async address =>
        {
            using var response = await client.PostAsJsonAsync(new Uri(address, path), body);
            return (response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
        },
        random);

    /// <summary>A call whose answer has no content.</summary>
    public Task GetAsync(string path, Random random) => CallAsync(
        async address =>
        {
            using var response = await client.GetAsync(new Uri(address, path));
            var text = await response.Content.ReadAsStringAsync();
            return (response.StatusCode, response.IsSuccessStatusCode ? new JsonObject() : JsonNode.Parse(text));
        },
        random);

    public void Dispose() => client.Dispose();

    private async Task<JsonNode> CallAsync(Func<Uri, Task<(HttpStatusCode Status, JsonNode? Body)>> call, Random random)
    {
        for (var (until, node) = (ledger.Now + Patience, random.Next(nodes.Count)); ; node = (node + 1) % nodes.Count)
        {
            try
            {
                var (status, body) = await call(nodes[node].Address);
                if ((int)status < 300)
                {
                    return body!;
                }

                var line = (string?)body!["error"] ?? "";
                Assert.True((int)status == 503 && line.Length > 0 && !line.Contains('\n', StringComparison.Ordinal), $"{(int)status}: {body.ToJsonString()}");
                ledger.Refuse(line);
            }
            catch (Exception cut) when (cut is HttpRequestException or IOException or OperationCanceledException)
            {
                ledger.Break();
            }

            Assert.True(ledger.Now < until, "No node answered for three minutes.");
            await Task.Delay(random.Next(50, 250));
        }
    }
}
