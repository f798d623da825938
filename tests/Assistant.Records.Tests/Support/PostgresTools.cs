using System.Diagnostics;
using Npgsql;

namespace Assistant.Records.Tests.Support;

/// <summary>PostgreSQL's own programs, told of a database as this program is.</summary>
internal static class PostgresTools
{
    /// <param name="arguments">A connection string among them is put in the way these programs want it.</param>
    public static async Task RunAsync(string program, params string[] arguments)
    {
        var told = arguments.Select(a => a.StartsWith("Host=", StringComparison.Ordinal) ? OwnWay(a) : a);
        using var run = Process.Start(new ProcessStartInfo(PostgresCluster.ProgramOf(program), told) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        var output = run.StandardOutput.ReadToEndAsync();
        var error = await run.StandardError.ReadToEndAsync();
        await run.WaitForExitAsync();
        await output;
        if (run.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program}: {error}");
        }
    }

    private static string OwnWay(string connection)
    {
        var settings = new NpgsqlConnectionStringBuilder(connection);
        return $"host={settings.Host} dbname={settings.Database} user={settings.Username}";
    }
}
