using System.Text.Json;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Program;

public class ScriptTests
{
    private static readonly string[] Keys = ["in", "by", "say", "asks", "walk", "stop", "place", "verdicts", "cautions"];
    private static readonly string HeatWave = Path.Combine(Repository.Root, "shared/demo/heat-wave.txt");

    [Fact]
    public async Task The_demo_script_names_the_dirty_condenser_until_it_is_clean_and_two_runs_are_the_same_byte_for_byte()
    {
        var first = await AppRun.OfAsync(["talk", "--demo", "--script", HeatWave, "--json"]);
        var second = await AppRun.OfAsync(["talk", "--demo", "--script", HeatWave, "--json"]);

        Assert.Equal((0, ""), (first.ExitCode, first.Error));
        Assert.Equal(first.Output, second.Output);
        var turns = first.Output.TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement).ToList();
        Assert.All(turns, turn => Assert.Equal(Keys, turn.EnumerateObject().Select(p => p.Name)));
        Assert.Equal(("condenser-airflow", "established"), Leader(turns.Single(turn => turn.GetProperty("in").GetString() == "packed with fluff")));
        Assert.Equal(("no-fault", "likely"), Leader(turns[^1]));
    }

    [Fact]
    public async Task A_named_person_is_in_the_output_and_comments_give_nothing()
    {
        var run = await AppRun.OfAsync(["talk", "--script", "-", "--json"], "# a comment\n\n@kim ok\n");

        var turn = JsonDocument.Parse(Assert.Single(run.Output.TrimEnd('\n').Split('\n'))).RootElement;
        Assert.Equal(("ok", "kim"), (turn.GetProperty("in").GetString(), turn.GetProperty("by").GetString()));
        Assert.Contains("trapped-inside", turn.GetProperty("cautions").EnumerateArray().Select(c => c.GetString()));
    }

    [Fact]
    public async Task Kept_records_carry_the_visit_on_and_their_log_verifies()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-e2e-").FullName;
        await AppRun.OfAsync(["talk", "--demo", "--script", "-", "--json", "--data", data], "ok\n9 C\n");

        var next = await AppRun.OfAsync(["talk", "--script", "-", "--json", "--data", data], "9.2 C\n");
        var verified = await AppRun.OfAsync(["verify", "--data", data]);
        var last = await AppRun.OfAsync(["verify", "last", "--data", data]);
        var report = await AppRun.OfAsync(["report", "last", "--format", "json", "--data", data]);

        Directory.Delete(data, recursive: true);
        Assert.Equal("setpoint", JsonDocument.Parse(next.Output).RootElement.GetProperty("asks").GetString());
        Assert.Matches(@"^\d+ events of 1 visit: every one fits, and 0 heads signed earlier fit the log\.\nThe heads as they are now are signed in ", verified.Output);
        Assert.Matches(@"^\d+ events of 1 visit: every one fits, and 1 head signed earlier fits the log\.", last.Output);
        Assert.Contains("9.2", report.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_arguments_the_first_question_is_asked_and_the_page_is_mentioned()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-e2e-").FullName;

        var run = await AppRun.OfAsync([], "", new Dictionary<string, string> { ["COLDWALK_DATA"] = data });

        Directory.Delete(data, recursive: true);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("[ok]", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"serve\"", run.Error, StringComparison.Ordinal);
    }

    private static (string? Code, string? Standing) Leader(JsonElement turn)
    {
        var leader = turn.GetProperty("verdicts")[0];
        return (leader.GetProperty("code").GetString(), leader.GetProperty("standing").GetString());
    }
}
