using System.Collections.Concurrent;
using System.Net;
using System.Web;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>
/// The stretch of bad signal between the gateway and the program: brings every message twice and lets later ones overtake those named.
/// While the program is away the gateway is told so and brings the message again itself.
/// </summary>
internal sealed class WeakSignal : IAsyncDisposable
{
    private static readonly TimeSpan LongestHold = TimeSpan.FromSeconds(6);

    private readonly HttpListener listener = new();
    private readonly HttpClient forward = new() { Timeout = TimeSpan.FromSeconds(5) };
    private readonly Uri program;
    private readonly HashSet<string> overtaken;
    private readonly ConcurrentDictionary<string, int> brought = new();
    private readonly Task listening;
    private readonly ConcurrentDictionary<string, byte> seen = new();
    private int forwarded;

    /// <param name="overtaken">The texts that later ones overtake.</param>
    public WeakSignal(int port, int programPort, IEnumerable<string> overtaken)
    {
        program = new($"http://127.0.0.1:{programPort}");
        this.overtaken = [.. overtaken];
        listener.Prefixes.Add($"http://127.0.0.1:{port}/");
        listener.Start();
        listening = Task.Run(ListenAsync);
    }

    /// <summary>The messages that the gateway has begun to bring, each counted once.</summary>
    public int Begun => seen.Count;

    /// <summary>The messages that got through, each counted once.</summary>
    public int Messages => brought.Count;

    /// <summary>How often messages were brought to the program in all.</summary>
    public int Deliveries => brought.Values.Sum();

    /// <summary>Waits until so many messages got through.</summary>
    public async Task WaitForAsync(int messages)
    {
        for (var until = DateTimeOffset.UtcNow + TimeSpan.FromSeconds(30); Messages < messages; await Task.Delay(10))
        {
            Assert.True(DateTimeOffset.UtcNow < until, $"{Messages} of {messages} messages got through.");
        }
    }

    public async ValueTask DisposeAsync()
    {
        listener.Close();
        await listening;
        forward.Dispose();
    }

    private async Task ListenAsync()
    {
        try
        {
            while (true)
            {
                var context = await listener.GetContextAsync();
                _ = Task.Run(() => PassAsync(context));
            }
        }
        catch (Exception stopped) when (stopped is HttpListenerException or ObjectDisposedException)
        {
            // Closed at the end of the test.
        }
    }

    private async Task PassAsync(HttpListenerContext context)
    {
        var target = new Uri(program, context.Request.RawUrl!);
        var fields = HttpUtility.ParseQueryString(target.Query);
        seen.TryAdd(fields["id"]!, 0);
        if (overtaken.Contains(fields["text"] ?? ""))
        {
            var before = Volatile.Read(ref forwarded);
            for (var until = DateTimeOffset.UtcNow + LongestHold; Volatile.Read(ref forwarded) == before && DateTimeOffset.UtcNow < until;)
            {
                await Task.Delay(50);
            }
        }

        var status = await BringAsync(target, fields["id"]!);
        status = status == 200 ? await BringAsync(target, fields["id"]!) : status;
        if (status == 200)
        {
            Interlocked.Increment(ref forwarded);
        }

        context.Response.StatusCode = status;
        context.Response.Close();
    }

    private async Task<int> BringAsync(Uri target, string id)
    {
        try
        {
            using var answer = await forward.GetAsync(target);
            if (answer.IsSuccessStatusCode)
            {
                brought.AddOrUpdate(id, 1, (_, times) => times + 1);
            }

            return (int)answer.StatusCode;
        }
        catch (Exception away) when (away is HttpRequestException or OperationCanceledException)
        {
            return 503;
        }
    }
}
