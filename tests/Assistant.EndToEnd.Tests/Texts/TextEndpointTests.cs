using System.Net;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>What a gateway gets for an answer when it calls; the gateway here is one that is never there.</summary>
public sealed class TextEndpointTests(ServerWithoutGateway served) : IClassFixture<ServerWithoutGateway>
{
    private readonly HttpClient client = served.Client;

    [Fact]
    public async Task A_message_is_answered_with_an_empty_200_each_time_it_is_brought()
    {
        for (var times = 0; times < 2; times++)
        {
            using var answer = await client.GetAsync(new Uri($"text/inbound?key={ServerWithoutGateway.Secret}&from=%2B15550100&text=box+47&time=1784000000&id=m1", UriKind.Relative));

            Assert.Equal((HttpStatusCode.OK, ""), (answer.StatusCode, await answer.Content.ReadAsStringAsync()));
        }
    }

    [Theory]
    [InlineData("inbound?key=wrong&from=1&text=box&id=m", HttpStatusCode.Forbidden, "key: it is not the gateway's.")]
    [InlineData("inbound?from=1&text=box&id=m", HttpStatusCode.Forbidden, "key")]
    [InlineData("inbound?key=an-invented-secret&text=box&id=m", HttpStatusCode.BadRequest, "from: it is missing.")]
    [InlineData("inbound?key=an-invented-secret&from=1&text=box", HttpStatusCode.BadRequest, "id: it is missing.")]
    [InlineData("inbound?key=an-invented-secret&from=1&text=box&id=m&time=yesterday", HttpStatusCode.BadRequest, "time: Unix seconds")]
    [InlineData("report?key=an-invented-secret&reply=1&attempt=1&type=3", HttpStatusCode.BadRequest, "type: 1, 2, 4, 8 or 16.")]
    [InlineData("report?key=wrong&reply=1&attempt=1&type=1", HttpStatusCode.Forbidden, "key")]
    public async Task What_can_not_be_taken_is_said_in_one_line(string call, HttpStatusCode status, string line)
    {
        using var answer = await client.GetAsync(new Uri("text/" + call, UriKind.Relative));

        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(line, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Half_a_setting_is_told_at_the_start()
    {
        var run = await AppRun.OfAsync(["serve", "--port", "0"], environment: new Dictionary<string, string> { ["COLDWALK_TEXT_SEND_URL"] = "http://127.0.0.1/send" });

        Assert.NotEqual(0, run.ExitCode);
        Assert.Contains("COLDWALK_TEXT_SEND_URL: an http or https address with {to} and {text} in it is wanted.", run.Error, StringComparison.Ordinal);
    }
}

/// <summary>The program with a gateway set that nobody answers for.</summary>
public sealed class ServerWithoutGateway : IAsyncLifetime, IDisposable
{
    internal const string Secret = "an-invented-secret";

    private readonly TextServer server;

    public ServerWithoutGateway()
    {
        var ports = new Ports(2);
        var port = ports.Take();
        server = new(port, new Dictionary<string, string>
        {
            ["COLDWALK_TEXT_SECRET"] = Secret,
            ["COLDWALK_TEXT_SEND_URL"] = $"http://127.0.0.1:{ports.Take()}/send?to={{to}}&text={{text}}",
        });
        Client = new() { BaseAddress = new($"http://127.0.0.1:{port}/") };
    }

    internal HttpClient Client { get; }

    public Task InitializeAsync() => server.StartAsync();

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose()
    {
        Client.Dispose();
        server.Dispose();
    }
}
