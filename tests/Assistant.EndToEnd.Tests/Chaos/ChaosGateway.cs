using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Web;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>
/// Stands for an SMS gateway: takes the replies for the phones, answers 202, and reports each delivery to whichever node is up. Every
/// reply it was given is counted by its number.
/// </summary>
internal sealed class ChaosGateway : IAsyncDisposable
{
    public const string Secret = "an-invented-secret";

    private readonly HttpListener listener = new();
    private readonly ConcurrentDictionary<long, int> taken = new();
    private readonly ConcurrentDictionary<string, ConcurrentQueue<string>> screens = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<Task> reports = [];
    private readonly ChaosNodes nodes;
    private readonly Task listening;

    public ChaosGateway(int port, ChaosNodes nodes)
    {
        this.nodes = nodes;
        listener.Prefixes.Add($"http://127.0.0.1:{port}/");
        listener.Start();
        listening = Task.Run(ListenAsync);
    }

    /// <summary>The replies by their number, and how often each was given to the gateway.</summary>
    public IReadOnlyDictionary<long, int> Taken => taken;

    /// <summary>What the program is told of this gateway.</summary>
    public static Dictionary<string, string> Environment(int port) => new()
    {
        ["COLDWALK_TEXT_SECRET"] = Secret,
        ["COLDWALK_TEXT_SEND_URL"] = $"http://127.0.0.1:{port}/send?to={{to}}&text={{text}}&report={{report}}",
        ["COLDWALK_TEXT_REPORT_URL"] = "http://127.0.0.1/text/report",
    };

    /// <summary>What a phone shows, in the order it came.</summary>
    public ConcurrentQueue<string> Screen(string number) => screens.GetOrAdd(number, _ => new());

    public async ValueTask DisposeAsync()
    {
        listener.Close();
        await listening;
        await Task.WhenAll(reports);
    }

    private async Task ListenAsync()
    {
        while (listener.IsListening)
        {
            try
            {
                Take(await listener.GetContextAsync());
            }
            catch (Exception closed) when (closed is HttpListenerException or ObjectDisposedException)
            {
                return;
            }
        }
    }

    private void Take(HttpListenerContext context)
    {
        // Read from the address itself: the listener's own reading of it takes percent-encoded bytes for Latin-1.
        var sent = HttpUtility.ParseQueryString(new Uri(context.Request.Url!, context.Request.RawUrl!).Query);
        var report = HttpUtility.ParseQueryString(new Uri(sent["report"]!).Query);
        var reply = long.Parse(report["reply"]!, CultureInfo.InvariantCulture);
        if (taken.AddOrUpdate(reply, 1, (_, times) => times + 1) == 1)
        {
            Screen(sent["to"]!).Enqueue(sent["text"]!);
        }

        reports.Add(Task.Run(() => nodes.GetAsync($"text/report?key={Secret}&type=1&reply={reply}&attempt={report["attempt"]}", new Random((int)reply))));
        try
        {
            context.Response.StatusCode = (int)HttpStatusCode.Accepted;
            context.Response.Close();
        }
        catch (Exception gone) when (gone is HttpListenerException or ObjectDisposedException)
        {
            // The node was killed before it had its answer.
        }
    }
}
