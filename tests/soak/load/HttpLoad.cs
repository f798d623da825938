using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Text;

namespace Assistant.Load;

/// <summary>
/// Turns a second over HTTP of 64 clients, each a conversation of its own: the program with its records on the disk against the echo bot,
/// by turns in one run, so that whatever else the machine does meets both. The bar: 0.7 of the echo bot.
/// </summary>
internal static class HttpLoad
{
    private const int Clients = 64;

    /// <summary>Until then the just-in-time compiler takes a good part of the processor, of the program more than of the echo bot.</summary>
    private const int WarmSeconds = 30;

    /// <summary>A call's answers in turn, so that the walk goes on and its verdicts are made.</summary>
    private static readonly string[] Said = ["ok", "41", "41", "36", "4", "yes", "good", "40", "none", "yes", "warm", "txv", "im at the unit", "status", "why", "suc 22 hd 201"];

    public static async Task<int> RunAsync(int seconds, int rounds)
    {
        using var echo = await Served.EchoAsync();
        using var program = await Served.ProgramAsync();
        foreach (var served in new[] { echo, program })
        {
            await RoundAsync(served, "warm-up", WarmSeconds);
        }

        var (echoed, answered) = (new List<Round>(), new List<Round>());
        for (var round = 0; round < rounds; round++)
        {
            echoed.Add(await RoundAsync(echo, $"e{round}", seconds));
            answered.Add(await RoundAsync(program, $"p{round}", seconds));
        }

        Tell("echo bot", echoed);
        Tell("program, SQLite", answered);
        var ratio = answered.Sum(r => r.Rate) / echoed.Sum(r => r.Rate);
        Console.WriteLine($"ratio {ratio:0.00} (bar 0.70); by round {string.Join(", ", answered.Zip(echoed, (a, e) => $"{a.Rate / e.Rate:0.00}"))}");
        return ratio >= 0.7 ? 0 : 1;
    }

    private static void Tell(string who, List<Round> rounds) => Console.WriteLine(
        $"{who}: {rounds.Average(r => r.Rate):0} turns/s of {Clients} clients, {Figures.Spread([.. rounds.SelectMany(r => r.Milliseconds)])}, {rounds.Average(r => r.ProcessorMilliseconds):0.00} ms of processor time a turn; {Machine.Load}");

    private static async Task<Round> RoundAsync(Served served, string run, int seconds)
    {
        var times = new ConcurrentBag<double>();
        var (watch, processor) = (Stopwatch.StartNew(), served.ProcessorTime);
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(async () =>
        {
            for (var i = 0; watch.Elapsed.TotalSeconds < seconds; i++)
            {
                var began = Stopwatch.GetTimestamp();
                using var body = new StringContent(Activity($"{run}-{client}", i), Encoding.UTF8, "application/json");
                using var answer = await served.Client.PostAsync(new Uri("api/messages", UriKind.Relative), body);
                if (answer.StatusCode != HttpStatusCode.OK || !(await answer.Content.ReadAsStringAsync()).Contains("\"message\"", StringComparison.Ordinal))
                {
                    throw new InvalidOperationException($"{answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
                }

                times.Add(Stopwatch.GetElapsedTime(began).TotalMilliseconds);
            }
        })));
        return new(times.Count / watch.Elapsed.TotalSeconds, times, (served.ProcessorTime - processor).TotalMilliseconds / times.Count);
    }

    private static string Activity(string conversation, int number) =>
        $$"""{"type":"message","id":"{{conversation}}-{{number}}","channelId":"test","serviceUrl":"http://127.0.0.1:1/","conversation":{"id":"{{conversation}}-{{number / Said.Length}}"},"from":{"id":"u-{{conversation}}","name":"Kim"},"recipient":{"id":"bot","name":"Coldwalk"},"text":"{{Said[number % Said.Length]}}","deliveryMode":"expectReplies"}""";

    private sealed record Round(double Rate, IReadOnlyCollection<double> Milliseconds, double ProcessorMilliseconds);
}
