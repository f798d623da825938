using System.Net;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>What a balancer is told.</summary>
public sealed class HealthTests
{
    [Fact]
    public async Task It_is_live_and_ready_and_says_so_past_every_guard()
    {
        await using var firm = await FirmServer.StartAsync();

        foreach (var path in new[] { "/health/live", "/health/ready" })
        {
            // By the address, not by the firm's name, and not through the proxy: as a supervisor on the machine asks.
            using var answer = await firm.Server.Client.GetAsync(path);
            Assert.Equal((HttpStatusCode.OK, """{"ok":true,"why":null}"""), (answer.StatusCode, await answer.Content.ReadAsStringAsync()));
        }
    }

    [Fact]
    public async Task Records_that_can_not_be_read_make_it_live_but_not_ready()
    {
        using var server = new AppServer();
        await server.InitializeAsync();
        foreach (var file in Directory.EnumerateFiles(server.Data, "coldwalk.db*"))
        {
            await File.WriteAllTextAsync(file, string.Concat(Enumerable.Repeat("not a database ", 4000)));
        }

        using var ready = await server.Client.GetAsync("/health/ready");
        using var live = await server.Client.GetAsync("/health/live");

        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Contains("\"why\":\"the records", await ready.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain(server.Data, await ready.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
        await server.KillAsync();
    }
}
