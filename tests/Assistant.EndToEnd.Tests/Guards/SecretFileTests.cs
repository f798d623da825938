using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>A secret may stand in a file; what goes wrong with it is told without it.</summary>
public sealed class SecretFileTests
{
    [Fact]
    public async Task A_secret_in_a_file_is_taken_like_one_in_the_environment()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, "short\n");

        var run = await ServeAsync(new() { ["COLDWALK_TEXT_SECRET_FILE"] = file });

        File.Delete(file);
        Assert.Equal("COLDWALK_TEXT_SECRET: the secret that the gateway calls with, 12 characters or more.\n", run.Error);
    }

    [Fact]
    public async Task A_file_that_is_not_there_and_a_secret_said_twice_are_one_line_each()
    {
        var missing = await ServeAsync(new() { ["COLDWALK_TEXT_SECRET_FILE"] = "/nowhere/secret" });
        var twice = await ServeAsync(new() { ["COLDWALK_TEXT_SECRET_FILE"] = "/nowhere/secret", ["COLDWALK_TEXT_SECRET"] = "an-invented-secret" });

        Assert.Matches(@"^COLDWALK_TEXT_SECRET_FILE: /nowhere/secret can not be read [^\n]+\n$", missing.Error);
        Assert.Equal("COLDWALK_TEXT_SECRET and COLDWALK_TEXT_SECRET_FILE are both set. Keep one of them.\n", twice.Error);
        Assert.DoesNotContain("an-invented-secret", twice.Error + twice.Output, StringComparison.Ordinal);
    }

    private static Task<AppRun> ServeAsync(Dictionary<string, string> environment) => AppRun.OfAsync(
        ["serve", "--port", "0"], environment: new Dictionary<string, string>(environment) { ["COLDWALK_TEXT_SEND_URL"] = "http://127.0.0.1:1/send?to={to}&text={text}" });
}
