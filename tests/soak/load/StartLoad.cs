using System.Diagnostics;
using System.Net.Sockets;
using System.Text;

namespace Assistant.Load;

/// <summary>From the start of the process to its first answer - the first question in the terminal, the first page over HTTP - on records that are new and on records that are there. The bar: one second.</summary>
internal static class StartLoad
{
    public static async Task<int> RunAsync(int times)
    {
        var (first, again, served, held) = (new List<double>(), new List<double>(), new List<double>(), 0.0);
        for (var i = 0; i < times; i++)
        {
            var data = Directory.CreateTempSubdirectory("coldwalk-start-");
            first.Add(Talk(data.FullName));
            again.Add(Talk(data.FullName));
            var (milliseconds, megabytes) = await ServeAsync(data.FullName, 20_000 + Random.Shared.Next(20_000));
            served.Add(milliseconds);
            held = Math.Max(held, megabytes);
            data.Delete(recursive: true);
        }

        Console.WriteLine($"talk to the first question, new records: {Spread(first)}");
        Console.WriteLine($"talk to the first question, records there: {Spread(again)}");
        Console.WriteLine($"serve to the first answer over HTTP: {Spread(served)}; {held:0} MB held then (bar 200)");
        Console.WriteLine(Machine.Load);
        return new[] { first, again, served }.Max(t => Figures.At(t, 0.5)) < 1000 && held < 200 ? 0 : 1;
    }

    private static string Spread(List<double> times) => $"quickest {times.Min():0} ms, median {Figures.At(times, 0.5):0} ms of {times.Count} (bar 1000)";

    private static double Talk(string data)
    {
        var watch = Stopwatch.StartNew();
        using var process = Start("talk", "--data", data);
        var text = new StringBuilder();
        // The prompt stands behind the first question.
        while (!text.ToString().EndsWith("> ", StringComparison.Ordinal) && process.StandardOutput.Read() is var sign and >= 0)
        {
            text.Append((char)sign);
        }

        var taken = watch.Elapsed.TotalMilliseconds;
        process.StandardInput.Close();
        process.WaitForExit();
        return taken;
    }

    private static async Task<(double Milliseconds, double Megabytes)> ServeAsync(string data, int port)
    {
        var watch = Stopwatch.StartNew();
        using var process = Start("serve", "--data", data, "--port", $"{port}");
        using var client = new HttpClient();
        try
        {
            while (true)
            {
                try
                {
                    (await client.GetAsync(new Uri($"http://127.0.0.1:{port}/api/start"))).EnsureSuccessStatusCode();
                    return (watch.Elapsed.TotalMilliseconds, Machine.ResidentMegabytes(process.Id));
                }
                catch (HttpRequestException notYet) when (notYet.InnerException is SocketException && watch.Elapsed < TimeSpan.FromSeconds(60))
                {
                    await Task.Delay(10);
                }
            }
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync();
        }
    }

    private static Process Start(params string[] arguments) =>
        Process.Start(new ProcessStartInfo("dotnet", [Machine.Program, .. arguments]) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
}
