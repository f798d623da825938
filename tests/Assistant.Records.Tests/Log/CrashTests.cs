using System.Diagnostics;
using System.Globalization;
using Assistant.Records.Chain;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Log;

public class CrashTests
{
    [Fact]
    public async Task Killed_in_the_middle_again_and_again_nothing_acknowledged_is_lost_and_no_append_is_half_there()
    {
        await using var records = await TemporaryRecords.OpenAsync();
        for (var run = 0; run < 5; run++)
        {
            var acknowledged = await RunAndKillAsync(records.Path, run, after: 3 + (run * 13));

            foreach (var (visit, version) in acknowledged)
            {
                var events = await records.Log.ReadAsync(visit);
                Assert.True(events.Length >= version, $"{visit}: {version} acknowledged, {events.Length} there");
                Assert.Equal(1, events.Length % 2);
                Assert.NotNull(await records.Log.ReplyToAsync("chat", $"{visit} {version - 2}"));
            }

            Assert.True((await new ChainVerifier(records.Database).VerifyAsync()).Holds);
        }
    }

    /// <summary>Kills the appender (SIGKILL) after so many acknowledgements; gives the last one of each visit.</summary>
    private static async Task<Dictionary<string, int>> RunAndKillAsync(string path, int run, int after)
    {
        using var appender = Process.Start(new ProcessStartInfo("dotnet", [typeof(Appender).Assembly.Location, "append", path, $"{run}"]) { RedirectStandardOutput = true })!;
        var acknowledged = new Dictionary<string, int>();
        for (var seen = 0; await appender.StandardOutput.ReadLineAsync() is { } line; seen++)
        {
            var end = line.LastIndexOf(' ');
            if (seen == after)
            {
                appender.Kill();
            }

            // The kill may cut the last line short.
            if (end > 0 && int.TryParse(line[(end + 1)..], CultureInfo.InvariantCulture, out var version) && line.StartsWith($"run-{run}-", StringComparison.Ordinal) && seen <= after)
            {
                acknowledged[line[..end]] = version;
            }
        }

        await appender.WaitForExitAsync();
        Assert.NotEmpty(acknowledged);
        return acknowledged;
    }
}
