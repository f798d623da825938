using System.Collections.Concurrent;
using System.Net;
using System.Text.Json.Nodes;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>Stands for a chat channel's own service on a free loopback port: takes what the bot sends and keeps it.</summary>
internal sealed class StubConnector : IAsyncDisposable
{
    private readonly HttpListener listener = new();
    private readonly BlockingCollection<(string Path, JsonNode Activity)> received = [];
    private readonly Task listening;

    public StubConnector()
    {
        for (var attempt = 0; ; attempt++)
        {
            try
            {
                Address = new($"http://127.0.0.1:{Random.Shared.Next(20000, 60000)}/");
                listener.Prefixes.Clear();
                listener.Prefixes.Add(Address.ToString());
                listener.Start();
                break;
            }
            catch (HttpListenerException) when (attempt < 20)
            {
                // Taken by another program: try another port.
            }
        }

        listening = Task.Run(ListenAsync);
    }

    public Uri Address { get; }

    public int Count => received.Count;

    /// <summary>The next activity the bot sent, with the path it was sent to.</summary>
    public (string Path, JsonNode Activity) Take() =>
        received.TryTake(out var sent, TimeSpan.FromSeconds(15)) ? sent : throw new TimeoutException("The bot sent nothing.");

    public async ValueTask DisposeAsync()
    {
        listener.Close();
        await listening;
        received.Dispose();
    }

    private async Task ListenAsync()
    {
        try
        {
            while (true)
            {
                var context = await listener.GetContextAsync();
                var activity = await JsonNode.ParseAsync(context.Request.InputStream);
                received.Add((context.Request.Url!.AbsolutePath, activity!));
                context.Response.ContentType = "application/json";
                await context.Response.OutputStream.WriteAsync("""{"id":"sent-1"}"""u8.ToArray());
                context.Response.Close();
            }
        }
        catch (Exception stopped) when (stopped is HttpListenerException or ObjectDisposedException)
        {
            // Closed at the end of the test.
        }
    }
}
