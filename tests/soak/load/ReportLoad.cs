using System.Diagnostics;

namespace Assistant.Load;

/// <summary>How long the report of a call takes, in each of its formats, from the request to the last byte.</summary>
internal static class ReportLoad
{
    private const int Times = 30;

    public static async Task<int> RunAsync()
    {
        using var program = await Served.ProgramAsync();
        const string Visit = "visit-report";
        (await program.Client.PostAsJsonAsync("api/visits", new { id = Visit, demo = true })).EnsureSuccessStatusCode();
        foreach (var (text, turn) in new[] { "ok", "41", "41", "36", "4", "yes", "good", "40", "none", "yes", "warm", "im at the unit", "15", "running", "all", "clean", "flashing", "suc 22 hd 201 ll 80" }.Select((t, i) => (t, i)))
        {
            (await program.Client.PostAsJsonAsync($"api/visits/{Visit}/messages", new { id = $"{Visit}-{turn}", text })).EnsureSuccessStatusCode();
        }

        foreach (var format in new[] { "html", "pdf", "json" })
        {
            var (times, size) = (new List<double>(), 0);
            for (var i = 0; i < Times; i++)
            {
                var watch = Stopwatch.StartNew();
                size = (await program.Client.GetByteArrayAsync(new Uri($"visits/{Visit}/report.{format}", UriKind.Relative))).Length;
                times.Add(watch.Elapsed.TotalMilliseconds);
            }

            Console.WriteLine($"report.{format}, {size / 1000.0:0} kB: first {times[0]:0} ms, then {Figures.Spread(times[5..])}; {Machine.Load}");
        }

        return 0;
    }
}
