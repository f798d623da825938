using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>The program as a firm runs it behind a proxy, with one person, Kim; the tests are the proxy.</summary>
public sealed class FirmServer : IAsyncDisposable
{
    private const string Name = "coldwalk.example";

    private readonly AppServer server;

    private FirmServer(AppServer server, string data) => (this.server, Data) = (server, data);

    internal string Data { get; }

    internal AppServer Server => server;

    internal static async Task<FirmServer> StartAsync(IReadOnlyDictionary<string, string>? environment = null)
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-firm-").FullName;
        await OfficeRunAsync(data, "add", "Kim", "--firm", "Invented Cooling");
        var server = new AppServer(data, ["--proxy", "127.0.0.1", "--host-name", Name]) { Environment = environment };
        await server.InitializeAsync();
        return new(server, data);
    }

    /// <summary>What the office says to the program on its own machine.</summary>
    internal Task<AppRun> OfficeAsync(params string[] arguments) => OfficeRunAsync(Data, arguments);

    internal async Task<string> KeyAsync() => (await OfficeAsync("key", "Kim")).Output.Trim();

    /// <summary>One request as the proxy hands it over; redirections are not followed.</summary>
    internal async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, HttpContent? content = null, string? key = null, string? cookies = null)
    {
        using var handler = new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false };
        using var client = new HttpClient(handler) { BaseAddress = server.Address };
        using var request = new HttpRequestMessage(method, path) { Content = content };
        request.Headers.Host = Name;
        request.Headers.Add("X-Forwarded-Proto", "https");
        request.Headers.Add("X-Forwarded-For", "192.0.2.7");
        if (key is not null)
        {
            request.Headers.Authorization = new("Bearer", key);
        }

        if (cookies is not null)
        {
            request.Headers.Add("Cookie", cookies);
        }

        return await client.SendAsync(request);
    }

    internal Task<HttpResponseMessage> PostAsync(string path, object body, string? key) =>
        SendAsync(HttpMethod.Post, path, new StringContent(System.Text.Json.JsonSerializer.Serialize(body), System.Text.Encoding.UTF8, "application/json"), key);

    internal static async Task<JsonNode> JsonAsync(HttpResponseMessage response) => JsonNode.Parse(await response.Content.ReadAsStringAsync())!;

    public async ValueTask DisposeAsync() => await server.DisposeAsync();

    private static async Task<AppRun> OfficeRunAsync(string data, params string[] arguments)
    {
        var run = await AppRun.OfAsync(["people", .. arguments, "--data", data]);
        Assert.True(run.ExitCode == 0, run.Error);
        return run;
    }
}
