using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Requests that trickle in or are far too large do not hold the program.</summary>
public sealed class SlowRequestTests(AppServer server) : IClassFixture<AppServer>
{
    private const int Trickles = 100;

    [Fact]
    public async Task A_hundred_requests_that_never_end_are_cut_and_the_others_are_answered_meanwhile()
    {
        var trickling = new List<TcpClient>();
        for (var i = 0; i < Trickles; i++)
        {
            var client = new TcpClient();
            await client.ConnectAsync(IPAddress.Loopback, server.Address.Port);
            // Half of them never finish their head, half never send the body they promise.
            await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(i % 2 == 0
                ? "GET /api/start HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Slow: "
                : "POST /api/visits HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: 10000\r\n\r\n{"));
            trickling.Add(client);
        }

        using var meanwhile = await server.Client.GetAsync("/api/start");
        Assert.Equal(HttpStatusCode.OK, meanwhile.StatusCode);

        var cut = Stopwatch.StartNew();
        foreach (var client in trickling)
        {
            client.ReceiveTimeout = 60_000;
            await DrainAsync(client);
            client.Dispose();
        }

        Assert.True(cut.Elapsed < TimeSpan.FromSeconds(50), $"the last was cut after {cut.Elapsed}");
        using var after = await server.Client.GetAsync("/api/start");
        Assert.Equal(HttpStatusCode.OK, after.StatusCode);
    }

    [Theory]
    [InlineData("/api/visits")]
    [InlineData("/api/visits/visit-0001/pictures/picture-0001?offset=0&size=1000")]
    [InlineData("/api/messages")]
    [InlineData("/enter")]
    public async Task A_hundred_megabytes_are_refused_before_they_are_read(string path)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, server.Address.Port);
        await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes($"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: 104857600\r\n\r\n"));

        var answer = Encoding.UTF8.GetString(await DrainAsync(client));

        Assert.Matches("^HTTP/1.1 (413|404|405) ", answer);
        if (answer.StartsWith("HTTP/1.1 413", StringComparison.Ordinal) && path != "/api/messages")
        {
            Assert.Contains("That is too large to be taken.", answer, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/api/visits")]
    [InlineData("/api/visits/visit-0001/pictures/picture-0001?offset=0&size=1000")]
    [InlineData("/api/messages")]
    [InlineData("/enter")]
    [InlineData("/nowhere")]
    public async Task Who_sends_too_much_to_the_end_before_listening_still_reads_the_answer(string path)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, server.Address.Port);
        var line = client.GetStream();
        await line.WriteAsync(Encoding.ASCII.GetBytes($"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\nContent-Type: application/json\r\nContent-Length: {20 * 50_000}\r\n\r\n"));
        for (var piece = 0; piece < 20; piece++)
        {
            await line.WriteAsync(new byte[50_000]);
            await Task.Delay(20);
        }

        Assert.Matches("^HTTP/1.1 (413|404|405) ", Encoding.UTF8.GetString(await DrainAsync(client)));
    }

    private static async Task<byte[]> DrainAsync(TcpClient client)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        using var read = new MemoryStream();
        try
        {
            await client.GetStream().CopyToAsync(read, patience.Token);
        }
        catch (IOException)
        {
            // Reset is as good as closed.
        }

        return read.ToArray();
    }
}
