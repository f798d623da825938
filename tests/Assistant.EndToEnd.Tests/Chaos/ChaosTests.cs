using System.Globalization;
using System.Text;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>Half a minute of kills with sixteen technicians here; <c>tests/soak/chaos</c> does ten minutes with sixty-four.</summary>
[Collection("nodes")]
public class ChaosTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Whatever_is_killed_every_acknowledged_answer_is_there_once_and_every_reminder_comes_once()
    {
        var (technicians, seconds, seed) = (Setting("TECHNICIANS", 16), Setting("SECONDS", 30), Setting("SEED", 20260714));
        await using var run = new ChaosRun(technicians, TimeSpan.FromSeconds(seconds), seed);

        await run.PlayAsync();
        var checks = new ChaosChecks(run);
        await checks.CheckAsync();

        Assert.True(run.Kills >= 2, "Nothing was killed.");
        var page = Report(run, checks, technicians, seconds, seed);
        output.WriteLine(page);
        if (Environment.GetEnvironmentVariable("COLDWALK_CHAOS_PAGE") is { Length: > 0 } file)
        {
            await File.WriteAllTextAsync(file, page);
        }
    }

    private static int Setting(string name, int usual) =>
        int.Parse(Environment.GetEnvironmentVariable($"COLDWALK_CHAOS_{name}") ?? $"{usual}", CultureInfo.InvariantCulture);

    private static string Report(ChaosRun run, ChaosChecks checks, int technicians, int seconds, int seed)
    {
        var ledger = run.Ledger;
        var page = new StringBuilder().AppendLine("# Nodes killed, PostgreSQL restarted").AppendLine();
        void Row(string what, string found) => page.AppendLine(CultureInfo.InvariantCulture, $"| {what} | {found} |");
        string Waits(string channel) => string.Create(
            CultureInfo.InvariantCulture,
            $"median {ledger.Wait(channel, 0.5).TotalSeconds:0.00} s, 99 of 100 within {ledger.Wait(channel, 0.99).TotalSeconds:0.0} s, the longest {ledger.LongestWait(channel).TotalSeconds:0.0} s");
        Row("what", "found");
        Row("---", "---");
        Row("run", $"2 nodes, 1 PostgreSQL, {technicians} technicians ({run.OnPage.Count} on the page, {run.ByText.Count} by text), {seconds} s, seed {seed}");
        Row("machine, date", $"{Environment.ProcessorCount} cores, {DateTime.UtcNow:yyyy-MM-dd HH:mm} UTC, load {File.ReadAllText("/proc/loadavg").Split(' ')[0]} at the end");
        Row("kills of a node (SIGKILL)", $"{run.Kills}");
        Row("answers acknowledged", $"{ledger.All.Count}; every one on record once, with the same words");
        Row("texts given to the gateway", $"{run.Gateway.Taken.Count}; none twice");
        Row("reminders", $"{run.OnPage.Sum(t => t.Reminders)} on the page, {run.ByText.Sum(t => t.Reminders)} by text; each once");
        Row("events of the log", $"{checks.Events}; the chain holds");
        Row("calls sent again", $"{ledger.Lost} whose line broke, {ledger.Refusals.Values.Sum()} that were refused in one line (503)");
        Row("longest time without any answer to anybody", string.Create(CultureInfo.InvariantCulture, $"{ledger.LongestSilence().TotalSeconds:0.0} s"));
        Row("wait for an answer on the page", Waits("page"));
        Row("wait for a reply by text", Waits("sms"));
        page.AppendLine().AppendLine("What happened:").AppendLine().AppendLine("```");
        foreach (var line in ledger.Happened)
        {
            page.AppendLine(line);
        }

        return page.AppendLine("```").ToString();
    }
}
