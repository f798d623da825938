using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Bot;

/// <summary>Who calls the bot endpoint is checked against the keys its cloud publishes; whoever is refused is told nothing of any visit.</summary>
public sealed partial class BotTokenTests(BotTokenTests.Registered registered) : IClassFixture<BotTokenTests.Registered>
{
    [Fact]
    public async Task A_token_of_the_right_key_for_this_bot_is_let_in()
    {
        using var taken = await registered.SayAsync("status", token: registered.Keys.Token("", Registered.Service));

        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
        Assert.Contains("Known so far", await taken.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("key", "SecurityTokenInvalidSignature")]
    [InlineData("audience", "UnauthorizedAccess")]
    [InlineData("expired", "UnauthorizedAccess")]
    [InlineData("issuer", "")]
    [InlineData("unsigned", "")]
    [InlineData("service", "UnauthorizedAccess")]
    [InlineData("none", "UnauthorizedAccess")]
    [InlineData("garbage", "")]
    public async Task Any_other_token_is_refused_and_logged_and_the_answer_holds_nothing(string wrong, string reason)
    {
        var token = wrong switch { "none" => null, "garbage" => "a.b.c", _ => registered.Keys.Token(wrong, Registered.Service) };

        await RefusedAsync(() => registered.SayAsync("status", token: token), $"Bot: a caller is refused: {reason}");
    }

    [Fact]
    public Task A_channel_the_key_is_not_endorsed_for_is_refused() =>
        RefusedAsync(() => registered.SayAsync("status", token: registered.Keys.Token("", Registered.Service), channel: "elsewhere"), "Bot: a caller is refused");

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("http://198.51.100.7/")]
    public Task A_foreign_service_address_is_refused_with_a_good_token(string service) =>
        RefusedAsync(() => registered.SayAsync("status", token: registered.Keys.Token("", service), service: service), "its service address is not on the list");

    [Fact]
    public async Task A_person_without_access_and_one_who_was_removed_are_told_nothing_and_it_is_logged()
    {
        foreach (var account in new[] { "29:stranger", "29:gone" })
        {
            using var taken = await registered.SayAsync("status", account, registered.Keys.Token("", Registered.Service));
            var answer = await taken.Content.ReadAsStringAsync();

            Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
            Assert.Contains("not enrolled", answer, StringComparison.Ordinal);
            Assert.DoesNotContain("Known so far", answer, StringComparison.Ordinal);
        }

        await UntilLoggedAsync("somebody on team who is not enrolled is refused", 0);
    }

    private async Task RefusedAsync(Func<Task<HttpResponseMessage>> say, string logged)
    {
        var before = registered.Server.Errors.Length;
        using var taken = await say();

        Assert.Equal(HttpStatusCode.Unauthorized, taken.StatusCode);
        Assert.Equal("", await taken.Content.ReadAsStringAsync());
        await UntilLoggedAsync(logged, before);
        Assert.DoesNotContain("an-invented-secret", registered.Server.Errors, StringComparison.Ordinal);
    }

    private async Task UntilLoggedAsync(string logged, int before)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(10); !registered.Server.Errors[before..].Contains(logged, StringComparison.Ordinal); await Task.Delay(20))
        {
            Assert.True(DateTimeOffset.UtcNow < until, registered.Server.Errors[before..]);
        }
    }

    /// <summary>The program with a registration and a firm: Kim is on a visit, one account was revoked.</summary>
    public sealed partial class Registered : IAsyncLifetime, IDisposable
    {
        public const string Service = "http://127.0.0.1:1/";

        private int count;

        internal ChannelKeys Keys { get; private set; } = null!;

        internal AppServer Server { get; private set; } = null!;

        public async Task InitializeAsync()
        {
            Keys = await ChannelKeys.StartAsync();
            Server = new(Directory.CreateTempSubdirectory("coldwalk-token-").FullName, []) { Environment = Keys.Environment };
            await OfficeAsync("add", "Kim", "--firm", "Invented Cooling");
            await OfficeAsync("add", "Sam", "--firm", "Invented Cooling");
            var (kim, sam) = (await OfficeAsync("code", "Kim"), await OfficeAsync("code", "Sam"));
            await Server.InitializeAsync();
            await WelcomeAsync("29:kim", kim);
            await WelcomeAsync("29:gone", sam);
            await OfficeAsync("revoke", "Sam");
            using var opened = await SayAsync("cold room is warm", token: Keys.Token("", Service));
            Assert.True(opened.IsSuccessStatusCode, Server.Errors);
        }

        internal Task<HttpResponseMessage> SayAsync(string text, string account = "29:kim", string? token = null, string service = Service, string channel = "team")
        {
            var request = new HttpRequestMessage(HttpMethod.Post, "api/messages")
            {
                Content = JsonContent.Create(new JsonObject
                {
                    ["type"] = "message",
                    ["id"] = $"t-{++count}",
                    ["channelId"] = channel,
                    ["serviceUrl"] = service,
                    ["conversation"] = new JsonObject { ["id"] = account },
                    ["from"] = new JsonObject { ["id"] = account, ["name"] = "Kim" },
                    ["recipient"] = new JsonObject { ["id"] = "bot", ["name"] = "Coldwalk" },
                    ["text"] = text,
                    ["deliveryMode"] = "expectReplies",
                }),
            };
            if (token is not null)
            {
                request.Headers.Authorization = new("Bearer", token);
            }

            return Server.Client.SendAsync(request);
        }

        public async Task DisposeAsync()
        {
            await Server.DisposeAsync();
            await Keys.DisposeAsync();
        }

        public void Dispose() => Server.Dispose();

        private async Task WelcomeAsync(string account, string code)
        {
            using var taken = await SayAsync(code, account, Keys.Token("", Service));
            Assert.True(taken.IsSuccessStatusCode, Server.Errors);
            Assert.Contains("Welcome", await taken.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        private async Task<string> OfficeAsync(params string[] arguments)
        {
            var run = await AppRun.OfAsync(["people", .. arguments, "--data", Server.Data]);
            Assert.True(run.ExitCode == 0, run.Error + run.Output);
            return CodePattern().Match(run.Output).Value;
        }

        [GeneratedRegex("[2346789KLMRWXY]{4}-[2346789KLMRWXY]{4}")]
        private static partial Regex CodePattern();
    }
}
