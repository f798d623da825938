using System.Globalization;
using Assistant.EndToEnd.Tests.Fixtures;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Kill;

/// <summary>A power cut costs nothing that was acknowledged. Ten kills here; <c>tests/soak/kill-run</c> does two hundred.</summary>
public class KillTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Every_acknowledged_answer_is_there_after_a_kill_and_the_walk_goes_on_at_the_same_stop()
    {
        var kills = int.Parse(Environment.GetEnvironmentVariable("COLDWALK_KILLS") ?? "10", CultureInfo.InvariantCulture);
        using var server = new AppServer();
        await server.InitializeAsync();
        var run = new KillRun(server, new Random(20260714));
        for (var round = 0; round < kills; round++)
        {
            await run.RoundAsync(round);
        }

        await server.KillAsync();
        var verified = await AppRun.OfAsync(["verify", "--data", server.Data]);

        Assert.Equal(0, verified.ExitCode);
        Assert.True(run.Acknowledged >= kills, "The kills came before anything was answered.");
        output.WriteLine($"{kills} kills: {run.Acknowledged} answers acknowledged, all there; {run.StoredUnseen} stored without their answer having been seen. {verified.Output}");
    }
}
