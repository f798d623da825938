using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Program;

/// <summary>What goes wrong at the start gives one clear line and a non-zero exit.</summary>
public class TroubleTests
{
    [Fact]
    public async Task A_port_in_use_is_one_line()
    {
        using var server = new AppServer();
        await server.InitializeAsync();
        var data = Directory.CreateTempSubdirectory("coldwalk-e2e-");

        var run = await AppRun.OfAsync(["serve", "--port", $"{server.Address.Port}", "--data", data.FullName]);

        data.Delete(recursive: true);
        await server.KillAsync();
        Assert.Equal(1, run.ExitCode);
        Assert.Equal($"Port {server.Address.Port} is in use by another program. Choose another with --port.\n", run.Error);
    }

    [Fact]
    public async Task A_walk_file_that_can_not_be_read_is_one_line_with_file_and_line()
    {
        var dialogs = Copy(Path.Combine(Path.GetDirectoryName(Repository.Program)!, "dialogs"));
        await File.AppendAllTextAsync(Path.Combine(dialogs, "walks", "warm-box.yaml"), "\nstops: [unclosed\n");

        var run = await AppRun.OfAsync(["talk", "--script", "-"], "9 degC\n", new Dictionary<string, string> { ["COLDWALK_DIALOGS"] = dialogs });

        Directory.Delete(dialogs, recursive: true);
        Assert.Equal(2, run.ExitCode);
        Assert.Matches(@"^dialogs/walks/warm-box\.yaml:\d+: [^\n]+\n$", run.Error);
    }

    [Fact]
    public async Task A_script_that_is_not_there_is_one_line()
    {
        var run = await AppRun.OfAsync(["talk", "--script", "/nowhere/call.txt", "--json"]);

        Assert.Equal(2, run.ExitCode);
        Assert.Matches(@"^/nowhere/call\.txt:1: file: it can not be read [^\n]+\n$", run.Error);
    }

    [Fact]
    public async Task A_data_folder_that_is_a_file_is_one_line()
    {
        var file = Path.GetTempFileName();

        var run = await AppRun.OfAsync(["talk", "--data", file]);

        File.Delete(file);
        Assert.Equal(1, run.ExitCode);
        Assert.Matches(@"^The data folder [^\n]+ can not be made or opened [^\n]+Name another with --data\.\n$", run.Error);
    }

    [Fact]
    public async Task Records_that_are_no_records_are_one_line_and_stay_as_they_are()
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-e2e-");
        var file = Path.Combine(data.FullName, "coldwalk.db");
        await File.WriteAllTextAsync(file, string.Concat(Enumerable.Repeat("not a database ", 500)));

        var run = await AppRun.OfAsync(["talk", "--data", data.FullName]);

        Assert.Equal(1, run.ExitCode);
        Assert.Matches(@"^[^\n]+is not a record file of Coldwalk[^\n]+\n$", run.Error);
        Assert.StartsWith("not a database", await File.ReadAllTextAsync(file), StringComparison.Ordinal);
        data.Delete(recursive: true);
    }

    private static string Copy(string folder)
    {
        var copy = Directory.CreateTempSubdirectory("coldwalk-dialogs-").FullName;
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy, Path.GetRelativePath(folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        return copy;
    }
}
