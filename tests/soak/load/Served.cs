using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Assistant.Load;

/// <summary>A server of ours as a process of its own on a free loopback port; stopped and cleared away at the end.</summary>
internal sealed partial class Served : IDisposable
{
    private readonly Process process;
    private readonly DirectoryInfo? data;

    private Served(Process process, DirectoryInfo? data, Uri address)
    {
        (this.process, this.data, Address) = (process, data, address);
        Client = new(new SocketsHttpHandler { MaxConnectionsPerServer = 256 }) { BaseAddress = address };
    }

    public Uri Address { get; }

    public HttpClient Client { get; }

    public int Process => process.Id;

    public TimeSpan ProcessorTime
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>The program with records of its own.</summary>
    public static Task<Served> ProgramAsync()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-load-");
        return StartAsync([Machine.Program, "serve", "--port", "0", "--data", data.FullName], data);
    }

    public static Task<Served> EchoAsync() => StartAsync([typeof(Served).Assembly.Location, "echo", "0"], null);

    public void Dispose()
    {
        Client.Dispose();
        process.Kill();
        process.WaitForExit();
        process.Dispose();
        data?.Delete(recursive: true);
    }

    private static async Task<Served> StartAsync(string[] arguments, DirectoryInfo? data)
    {
        var process = System.Diagnostics.Process.Start(new ProcessStartInfo("dotnet", arguments) { RedirectStandardOutput = true })!;
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (await process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            if (AddressPattern().Match(line) is { Success: true } found)
            {
                return new(process, data, new(found.Value));
            }
        }

        throw new InvalidOperationException("The server ended before it served.");
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/?")]
    private static partial Regex AddressPattern();
}
