using System.Diagnostics;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Texts;

/// <summary>
/// A real SMS gateway on loopback ports, set up from the configuration in <c>deploy/kannel</c>. Its centre is Kannel's own fake one; a
/// second fake centre carries the replies, so that a phone can send and receive at the same time.
/// </summary>
internal sealed class Kannel : IDisposable
{
    private const string Secret = "invented-coldwalk-secret";
    private const string SendPassword = "invented-send-password";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-kannel-").FullName;
    private readonly List<Process> running = [];
    private readonly int adminPort;
    private readonly int sendPort;

    /// <param name="programPort">Where the program listens.</param>
    /// <param name="signalPort">Where messages go in first: the stretch of bad signal before the program.</param>
    public Kannel(Ports ports, int programPort, int signalPort)
    {
        (adminPort, sendPort, ArrivalPort, PhonePort) = (ports.Take(), ports.Take(), ports.Take(), ports.Take());
        var conf = File.ReadAllText(Path.Combine(Repository.Root, "deploy/kannel/kannel.conf"))
            .Replace("13000", $"{adminPort}", StringComparison.Ordinal)
            .Replace("13001", $"{ports.Take()}", StringComparison.Ordinal)
            .Replace("13002", $"{ArrivalPort}", StringComparison.Ordinal)
            .Replace("13013", $"{sendPort}", StringComparison.Ordinal)
            .Replace("127.0.0.1:5080", $"127.0.0.1:{signalPort}", StringComparison.Ordinal)
            .Replace("/var/spool/kannel", folder, StringComparison.Ordinal)
            .Replace("/var/log/kannel", folder, StringComparison.Ordinal)
            .Replace("http-queue-delay = 5", "http-queue-delay = 1", StringComparison.Ordinal)
            .Replace("CHANGE-ADMIN-PASSWORD", SendPassword, StringComparison.Ordinal)
            // Otherwise a reply may go to whoever is just sending a text, who reads nothing.
            .Replace("smsc-id = network", "smsc-id = network\ndenied-smsc-id = phones", StringComparison.Ordinal);
        File.WriteAllText(Conf, Filled(conf) + $"\ngroup = smsc\nsmsc = fake\nsmsc-id = phones\nport = {PhonePort}\nconnect-allow-ip = \"127.0.0.1\"\n");
        Directory.CreateDirectory(Path.Combine(folder, "store"));
        Directory.CreateDirectory(Path.Combine(folder, "dlr"));
        Environment = File.ReadAllLines(Path.Combine(Repository.Root, "deploy/kannel/coldwalk.env"))
            .Where(l => l.Contains('=', StringComparison.Ordinal) && !l.StartsWith('#'))
            .Select(l => Filled(l).Replace("13013", $"{sendPort}", StringComparison.Ordinal).Replace("5080", $"{programPort}", StringComparison.Ordinal).Split('=', 2))
            .ToDictionary(p => p[0], p => p[0].EndsWith("SEND_URL", StringComparison.Ordinal) ? p[1] + "&smsc=phones" : p[1]);
    }

    /// <summary>Where the fake centre takes what phones send.</summary>
    public int ArrivalPort { get; }

    /// <summary>Where the fake centre gives out what is sent to phones.</summary>
    public int PhonePort { get; }

    /// <summary>What the program is told of this gateway.</summary>
    public IReadOnlyDictionary<string, string> Environment { get; }

    private string Conf => Path.Combine(folder, "kannel.conf");

    public static bool IsInstalled => File.Exists("/usr/sbin/bearerbox") && File.Exists("/usr/sbin/smsbox");

    public async Task StartAsync()
    {
        running.Add(Run("/usr/sbin/bearerbox"));
        await UntilAsync("Status: running");
        running.Add(Run("/usr/sbin/smsbox"));
        await UntilAsync("smsbox:(none)");
    }

    /// <summary>As a power cut does it (SIGKILL).</summary>
    public void Kill()
    {
        foreach (var process in running)
        {
            process.Kill();
            process.WaitForExit();
            process.Dispose();
        }

        running.Clear();
    }

    public void Dispose()
    {
        Kill();
        Directory.Delete(folder, recursive: true);
    }

    private static string Filled(string text) => text
        .Replace("CHANGE-COLDWALK-SECRET", Secret, StringComparison.Ordinal)
        .Replace("CHANGE-SEND-PASSWORD", SendPassword, StringComparison.Ordinal)
        .Replace("CHANGE-OWN-NUMBER", TextingPhone.Coldwalk, StringComparison.Ordinal);

    private Process Run(string program)
    {
        var process = Process.Start(new ProcessStartInfo(program, ["-v", "4", Conf]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder })!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    private async Task UntilAsync(string standing)
    {
        using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(2) };
        for (var tries = 0; tries < 100; tries++)
        {
            try
            {
                if ((await client.GetStringAsync(new Uri($"http://127.0.0.1:{adminPort}/status.txt?password={SendPassword}"))).Contains(standing, StringComparison.Ordinal))
                {
                    return;
                }
            }
            catch (Exception early) when (early is HttpRequestException or OperationCanceledException)
            {
                // Not up yet.
            }

            await Task.Delay(100);
        }

        throw new TimeoutException($"The gateway did not come to \"{standing}\"; its logs are in {folder}.");
    }
}
