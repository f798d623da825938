using System.Collections.Concurrent;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>Stands for a chat channel's own service on a free loopback port: takes what the bot sends and keeps it.</summary>
internal sealed class StubConnector : IAsyncDisposable
{
    private readonly HttpListener listener = new();
    private readonly BlockingCollection<(string Path, JsonNode Activity)> received = [];
    private readonly ConcurrentQueue<Call> calls = new();
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

    /// <summary>Everything that was asked of the service, in its order.</summary>
    public IReadOnlyList<Call> Calls => [.. calls];

    /// <summary>What the service answers, where it does not take it (404: the conversation is gone).</summary>
    public HttpStatusCode Status { get; set; } = HttpStatusCode.OK;

    /// <summary>False for a service that changes no posts (405).</summary>
    public bool TakesChanges { get; set; } = true;

    /// <summary>The next activity the bot sent, with the path it was sent to.</summary>
    public (string Path, JsonNode Activity) Take() =>
        received.TryTake(out var sent, TimeSpan.FromSeconds(15)) ? sent : throw new TimeoutException("The bot sent nothing.");

    public async ValueTask DisposeAsync()
    {
        listener.Close();
        await listening;
        received.Dispose();
    }

    /// <summary>One thing the bot asked of the service.</summary>
    /// <param name="Id">The id that was given to what was posted.</param>
    internal sealed record Call(string Method, string Path, JsonNode Activity, string Id)
    {
        public string Text => (string?)Activity["text"] ?? "";
    }

    private async Task ListenAsync()
    {
        try
        {
            while (true)
            {
                var context = await listener.GetContextAsync();
                var activity = await JsonNode.ParseAsync(context.Request.InputStream);
                var call = new Call(context.Request.HttpMethod, context.Request.Url!.AbsolutePath, activity!, $"sent-{calls.Count + 1}");
                context.Response.ContentType = "application/json";
                var status = call.Method == "PUT" && !TakesChanges ? HttpStatusCode.MethodNotAllowed : Status;
                context.Response.StatusCode = (int)status;
                if (status == HttpStatusCode.OK)
                {
                    calls.Enqueue(call);
                    received.Add((call.Path, activity!));
                    await context.Response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes($$"""{"id":"{{call.Id}}"}"""));
                }

                context.Response.Close();
            }
        }
        catch (Exception stopped) when (stopped is HttpListenerException or ObjectDisposedException)
        {
            // Closed at the end of the test.
        }
    }
}
