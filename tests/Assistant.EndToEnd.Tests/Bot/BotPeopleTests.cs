using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Bot;

/// <summary>With a firm set up the bot hears its people, by their accounts, and tells nobody else anything.</summary>
public sealed class BotPeopleTests : IAsyncLifetime, IDisposable
{
    private readonly AppServer server = new();
    private string code = "";
    private int count;

    public async Task InitializeAsync()
    {
        await PeopleAsync("add", "Kim", "--firm", "Invented Cooling");
        code = await PeopleAsync("code", "Kim");
        await server.InitializeAsync();
    }

    public Task DisposeAsync() => server.DisposeAsync();

    public void Dispose() => server.Dispose();

    [Fact]
    public async Task One_who_is_not_enrolled_is_told_only_that_whatever_name_is_shown()
    {
        var said = await SayAsync("29:stranger", "status", shownAs: "Kim");

        Assert.StartsWith("This account is not enrolled.", Assert.Single(said), StringComparison.Ordinal);
        Assert.StartsWith("I do not know who you are.", Assert.Single(await SayAsync("29:stranger", "Coldwalk: status", shownAs: "Kim", isGroup: true)), StringComparison.Ordinal);
        Assert.Empty(await SayAsync("29:stranger", "status", shownAs: "Kim", isGroup: true));
        Assert.Equal("", await VisitsAsync());
    }

    [Fact]
    public async Task An_account_is_enrolled_by_a_code_written_directly_and_speaks_under_the_persons_name_until_it_is_removed()
    {
        Assert.StartsWith("I do not know who you are.", Assert.Single(await SayAsync("29:kim", $"Coldwalk: {code}", isGroup: true)), StringComparison.Ordinal);
        Assert.StartsWith("Welcome, Kim.", Assert.Single(await SayAsync("29:kim", code)), StringComparison.Ordinal);
        Assert.Contains("try the release from inside", Assert.Single(await SayAsync("29:kim", "hello", shownAs: "somebody")), StringComparison.Ordinal);
        Assert.StartsWith("That code is not good.", Assert.Single(await SayAsync("29:other", code)), StringComparison.Ordinal);

        await PeopleAsync("revoke", "Kim");

        Assert.StartsWith("This account is not enrolled.", Assert.Single(await SayAsync("29:kim", "status")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("page")]
    [InlineData("sms")]
    [InlineData("xmpp")]
    [InlineData("key")]
    public async Task A_service_that_calls_itself_by_one_of_our_own_ways_in_is_not_answered(string channel) =>
        Assert.Empty(await SayAsync("29:kim", "status", channel: channel));

    private async Task<string> PeopleAsync(params string[] arguments)
    {
        var run = await AppRun.OfAsync(["people", .. arguments, "--data", server.Data]);
        Assert.True(run.ExitCode == 0, run.Error + run.Output);
        return Regex.Match(run.Output, "[2346789KLMRWXY]{4}-[2346789KLMRWXY]{4}").Value;
    }

    private async Task<string> VisitsAsync()
    {
        using var response = await server.Client.GetAsync("/api/start");
        return string.Join(' ', (await response.Content.ReadFromJsonAsync<JsonNode>())?["visits"]?.AsArray().Select(v => (string?)v!["site"]) ?? []);
    }

    private async Task<IReadOnlyList<string>> SayAsync(string account, string text, string shownAs = "Lee", bool isGroup = false, string channel = "test")
    {
        using var response = await server.Client.PostAsJsonAsync("api/messages", new JsonObject
        {
            ["type"] = "message",
            ["id"] = $"p-{++count}",
            ["channelId"] = channel,
            ["serviceUrl"] = "http://127.0.0.1:1/",
            ["conversation"] = new JsonObject { ["id"] = $"{account} {isGroup}", ["isGroup"] = isGroup },
            ["from"] = new JsonObject { ["id"] = account, ["name"] = shownAs },
            ["recipient"] = new JsonObject { ["id"] = "bot", ["name"] = "Coldwalk" },
            ["text"] = text,
            ["deliveryMode"] = "expectReplies",
        });
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return [.. (await response.Content.ReadFromJsonAsync<JsonNode>())!["activities"]!.AsArray().Select(a => (string?)a!["text"] ?? "")];
    }
}
