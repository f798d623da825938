using System.Globalization;
using Xunit.Abstractions;

namespace Assistant.Channels.Tests.Text;

/// <summary>
/// The same call over a network that delivers twice, late and out of order, with a gateway that fails and a program that is killed: it
/// comes to the same, and each text is answered once. Twenty schedules here; <c>tests/soak/text-schedules</c> does a thousand.
/// </summary>
public class ScheduleTests(ITestOutputHelper output)
{
    /// <summary>Schedules around one that once found a fault: a reply taken by the gateway just before a power cut, and answered before its report came.</summary>
    private const int Known = 540;

    [Fact]
    public async Task Whatever_the_network_does_the_call_comes_to_the_same_and_each_text_is_answered_once()
    {
        var many = Environment.GetEnvironmentVariable("COLDWALK_SCHEDULES");
        var (first, schedules) = many is null ? (Known, 20) : (0, int.Parse(many, CultureInfo.InvariantCulture));
        await using var calm = await TextScene.OpenAsync();
        var inOrder = await new TextSchedule(calm, "+15551000000", null).RunAsync();
        Assert.Contains("mended condenser-airflow", inOrder.Outcome, StringComparison.Ordinal);
        Assert.DoesNotContain("closed: no", inOrder.Outcome, StringComparison.Ordinal);

        // Two at a time, each with records of its own; a schedule is told by its seed alone.
        var halves = await Task.WhenAll(Enumerable.Range(0, 2).Select(half => Task.Run(() => RunAsync(inOrder.Outcome, first + half, first + schedules))));

        var total = halves.Aggregate((a, b) => new(a.Kills + b.Kills, a.Repeats + b.Repeats, a.Overtaken + b.Overtaken, a.Refusals + b.Refusals));
        Assert.True(total.Kills >= schedules && total.Overtaken >= schedules, "The schedules were too calm to tell anything.");
        output.WriteLine($"{schedules} schedules: {total.Kills} kills, {total.Repeats} messages brought again, {total.Overtaken} overtaken, {total.Refusals} attempts the gateway refused; the same outcome each time, no reply lost or doubled");
    }

    private static async Task<Trouble> RunAsync(string expected, int first, int end)
    {
        await using var scene = await TextScene.OpenAsync();
        var sum = new Trouble(0, 0, 0, 0);
        for (var seed = first; seed < end; seed += 2)
        {
            var run = await new TextSchedule(scene, $"+15552{seed:000000}", seed).RunAsync();
            Assert.True(expected == run.Outcome, $"Schedule {seed} came to:\n{run.Outcome}\nand in order it is:\n{expected}");
            Assert.True(run.Lost.Count == 0 && run.Doubled.Count == 0, $"Schedule {seed}: lost {string.Join(", ", run.Lost)}; doubled {string.Join(", ", run.Doubled)}");
            sum = new(sum.Kills + run.Trouble.Kills, sum.Repeats + run.Trouble.Repeats, sum.Overtaken + run.Trouble.Overtaken, sum.Refusals + run.Trouble.Refusals);
        }

        return sum;
    }
}
