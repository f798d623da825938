using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Texts;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>A real chat server (Debian package prosody) on loopback ports, with the rooms and the component as <c>deploy/prosody</c> sets them up.</summary>
internal sealed class Prosody : IDisposable
{
    public const string Host = "chat.localhost";
    public const string Password = "invented-password";
    public const string Room = "service@rooms." + Host;

    private const string Program = "/usr/bin/prosody";
    private const string Secret = "invented-coldwalk-secret";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-prosody-").FullName;
    private readonly int componentPort;
    private Process? running;

    /// <param name="accounts">Who has an account on it.</param>
    public Prosody(params string[] accounts)
    {
        var ports = new Ports(2);
        (PeoplePort, componentPort) = (ports.Take(), ports.Take());
        var deployed = Filled(File.ReadAllText(Path.Combine(Repository.Root, "deploy/prosody/coldwalk.cfg.lua")));
        File.WriteAllText(Path.Combine(folder, "coldwalk.cfg.lua"), deployed);
        File.WriteAllText(Conf, $$"""
            run_as_root = true
            pidfile = "{{folder}}/prosody.pid"
            data_path = "{{folder}}/data"
            log = { info = "{{folder}}/prosody.log" }
            interfaces = { "127.0.0.1" }
            c2s_ports = { {{PeoplePort}} }
            component_ports = { {{componentPort}} }
            modules_enabled = { "roster", "saslauth", "disco", "ping" }
            modules_disabled = { "s2s" }
            authentication = "internal_plain"
            c2s_require_encryption = false
            allow_unencrypted_plain_auth = true
            VirtualHost "{{Host}}"
            Include "{{folder}}/coldwalk.cfg.lua"
            """);
        var book = Directory.CreateDirectory(Path.Combine(folder, "data", Host.Replace(".", "%2e", StringComparison.Ordinal), "accounts")).FullName;
        foreach (var account in accounts)
        {
            File.WriteAllText(Path.Combine(book, account + ".dat"), $$"""return { ["password"] = "{{Password}}" };""");
        }

        Environment = File.ReadAllLines(Path.Combine(Repository.Root, "deploy/prosody/coldwalk.env"))
            .Where(l => l.Contains('=', StringComparison.Ordinal) && !l.StartsWith('#'))
            .Select(l => Filled(l).Replace("5347", $"{componentPort}", StringComparison.Ordinal).Split('=', 2))
            .ToDictionary(p => p[0], p => p[1]);
    }

    /// <summary>Where people connect.</summary>
    public int PeoplePort { get; }

    /// <summary>What the program is told of this server.</summary>
    public Dictionary<string, string> Environment { get; }

    public static bool IsInstalled => File.Exists(Program);

    public string Log => File.Exists(folder + "/prosody.log") ? File.ReadAllText(folder + "/prosody.log") : "";

    private string Conf => Path.Combine(folder, "prosody.cfg.lua");

    public async Task StartAsync()
    {
        running = Process.Start(new ProcessStartInfo(Program, ["--config", Conf, "-F"]) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder })!;
        running.OutputDataReceived += (_, _) => { };
        running.ErrorDataReceived += (_, _) => { };
        running.BeginOutputReadLine();
        running.BeginErrorReadLine();
        foreach (var port in new[] { PeoplePort, componentPort })
        {
            await UntilOpenAsync(port);
        }
    }

    /// <summary>As a power cut does it (SIGKILL).</summary>
    public void Kill()
    {
        running?.Kill();
        running?.WaitForExit();
        running?.Dispose();
        running = null;
    }

    public void Dispose()
    {
        Kill();
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Filled(string text) => text
        .Replace("chat.example", Host, StringComparison.Ordinal)
        .Replace("CHANGE-COLDWALK-SECRET", Secret, StringComparison.Ordinal);

    private async Task UntilOpenAsync(int port)
    {
        for (var tries = 0; tries < 100; tries++)
        {
            using var client = new TcpClient();
            try
            {
                await client.ConnectAsync(IPAddress.Loopback, port);
                return;
            }
            catch (SocketException)
            {
                await Task.Delay(100);
            }
        }

        throw new TimeoutException($"The chat server did not come up: {Log}");
    }
}
