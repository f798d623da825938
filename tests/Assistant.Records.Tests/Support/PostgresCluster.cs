using System.Diagnostics;

namespace Assistant.Records.Tests.Support;

/// <summary>
/// A PostgreSQL of the tests' own in a temporary folder: reached by a socket in it, run by a user that is not root, and stopped and cleared
/// away when its standard input closes - at the latest when the tests' process is gone.
/// </summary>
internal sealed class PostgresCluster : IAsyncDisposable
{
    private static readonly string Programs = Directory.GetDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin")).Order(StringComparer.Ordinal).Last();

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-pg-").FullName;
    private readonly string[] settings;
    private Process? server;

    /// <param name="settings">Server settings, such as "fsync=off" where no power cut is part of the test.</param>
    private PostgresCluster(string[] settings) => this.settings = settings;

    /// <summary>The path of one of PostgreSQL's own programs.</summary>
    public static string ProgramOf(string name) => Path.Combine(Programs, name);

    private string Data => Path.Combine(folder, "data");

    public static async Task<PostgresCluster> StartNewAsync(params string[] settings)
    {
        var cluster = new PostgresCluster(settings);
        if (Environment.IsPrivilegedProcess)
        {
            await RunAsync("chown", "postgres", cluster.folder);
        }

        var (program, arguments) = AsUser(ProgramOf("initdb"), "-D", cluster.Data, "-U", "coldwalk", "-A", "trust", "-E", "UTF8", "--no-sync");
        await RunAsync(program, arguments);
        await cluster.StartAsync();
        return cluster;
    }

    public string ConnectionTo(string database) => $"Host={folder};Database={database};Username=coldwalk;Maximum Pool Size=20";

    /// <summary>Starts it, or starts it again after a stop.</summary>
    public async Task StartAsync()
    {
        string[] command = [ProgramOf("postgres"), "-D", Data, "-k", folder, "-c", "listen_addresses=", "-c", "max_connections=200", .. settings.SelectMany(s => new[] { "-c", s })];

        // The shell waits for the name of a signal, and then stops the server it started; where its input ends, or all of a run is told to end, for good.
        const string held = """
            "$@" >>"$0/log" 2>&1 & server=$!
            end() { kill -INT $server; wait $server; rm -rf "$0"; exit; }
            trap end TERM HUP INT
            read how || end
            kill -$how $server; wait $server
            """;
        var (program, arguments) = AsUser("sh", ["-c", held, folder, .. command]);
        server = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardInput = true })!;
        for (var tries = 0; !await IsReadyAsync(); tries++)
        {
            if (tries > 1000 || server.HasExited)
            {
                throw new InvalidOperationException($"PostgreSQL does not start: {await File.ReadAllTextAsync(Path.Combine(folder, "log"))}");
            }

            await Task.Delay(50);
        }
    }

    /// <summary>Stops it; what is under way is broken off.</summary>
    /// <param name="atOnce">True to leave everything as it lies, as a power cut does: it recovers at the next start.</param>
    public async Task StopAsync(bool atOnce = false)
    {
        await server!.StandardInput.WriteLineAsync(atOnce ? "QUIT" : "INT");
        await EndAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (server is not null)
        {
            await EndAsync();
        }

        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private async Task EndAsync()
    {
        server!.StandardInput.Close();
        await server.WaitForExitAsync();
        server.Dispose();
        server = null;
    }

    private async Task<bool> IsReadyAsync()
    {
        using var asked = Process.Start(new ProcessStartInfo(ProgramOf("pg_isready"), ["-q", "-h", folder]))!;
        await asked.WaitForExitAsync();
        return asked.ExitCode == 0;
    }

    // PostgreSQL refuses to run as root.
    private static (string Program, string[] Arguments) AsUser(string program, params string[] arguments) => Environment.IsPrivilegedProcess
        ? ("runuser", ["-u", "postgres", "--", program, .. arguments])
        : (program, arguments);

    private static async Task RunAsync(string program, params string[] arguments)
    {
        using var run = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (output, error) = (run.StandardOutput.ReadToEndAsync(), run.StandardError.ReadToEndAsync());
        await run.WaitForExitAsync();
        if (run.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program}: {await error} {await output}");
        }
    }
}
