using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Bot;

public class BotEndpointTests(AppServer server) : IClassFixture<AppServer>
{
    [Fact]
    public async Task With_expect_replies_the_answer_comes_back_in_the_response()
    {
        using var response = await PostAsync(Said("a-1", "expect-1", "ok", "http://127.0.0.1:1/", expectReplies: true));

        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var replies = await response.Content.ReadFromJsonAsync<JsonNode>();
        var reply = Assert.Single(replies!["activities"]!.AsArray());
        Assert.Equal("message", (string?)reply!["type"]);
        Assert.Contains("try the release from inside", (string?)reply["text"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_normal_delivery_the_answer_goes_to_the_channels_own_service()
    {
        await using var connector = new StubConnector();

        using var response = await PostAsync(Said("b-1", "normal-1", "ok", connector.Address.ToString()));

        Assert.True(response.IsSuccessStatusCode);
        var (path, activity) = connector.Take();
        Assert.Equal("/v3/conversations/normal-1/activities/b-1", path);
        Assert.Contains("try the release from inside", (string?)activity["text"], StringComparison.Ordinal);
        Assert.Equal("b-1", (string?)activity["replyToId"]);
    }

    [Fact]
    public async Task One_answer_after_the_other_goes_to_the_same_service()
    {
        await using var connector = new StubConnector();
        foreach (var id in new[] { "g-1", "g-2", "g-3" })
        {
            using var response = await PostAsync(Said(id, "after-1", "status", connector.Address.ToString()));

            Assert.True(response.IsSuccessStatusCode, $"{id}: {response.StatusCode}");
            Assert.Equal(id, (string?)connector.Take().Activity["replyToId"]);
        }
    }

    [Fact]
    public async Task The_same_activity_id_gets_the_same_answer_and_changes_nothing()
    {
        var activity = Said("c-1", "repeat-1", "ok", "http://127.0.0.1:1/", expectReplies: true);
        using var first = await PostAsync(activity);
        using var next = await PostAsync(Said("c-2", "repeat-1", "R449A", "http://127.0.0.1:1/", expectReplies: true));

        using var again = await PostAsync(activity);

        Assert.Equal(await TextAsync(first), await TextAsync(again));
    }

    [Theory]
    [InlineData("http://198.51.100.7/")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("")]
    public async Task A_foreign_service_address_is_refused(string serviceUrl)
    {
        using var response = await PostAsync(Said("d-1", "foreign-1", "9 degC", serviceUrl, expectReplies: true));

        Assert.Equal(HttpStatusCode.Unauthorized, response.StatusCode);
    }

    [Fact]
    public async Task Another_sites_page_can_not_post_here()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/messages") { Content = Body(Said("e-1", "origin-1", "9 degC", "http://127.0.0.1:1/")) };
        request.Headers.Add("Origin", "https://elsewhere.example");

        using var response = await server.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    private static JsonObject Said(string id, string conversation, string text, string serviceUrl, bool expectReplies = false) => new()
    {
        ["type"] = "message",
        ["id"] = id,
        ["channelId"] = "test",
        ["serviceUrl"] = serviceUrl,
        ["conversation"] = new JsonObject { ["id"] = conversation },
        ["from"] = new JsonObject { ["id"] = "u-1", ["name"] = "Kim" },
        ["recipient"] = new JsonObject { ["id"] = "bot", ["name"] = "Coldwalk" },
        ["text"] = text,
        ["deliveryMode"] = expectReplies ? "expectReplies" : "normal",
    };

    private static StringContent Body(JsonObject activity) => new(activity.ToJsonString(), Encoding.UTF8, "application/json");

    private static async Task<string?> TextAsync(HttpResponseMessage response) =>
        (string?)(await response.Content.ReadFromJsonAsync<JsonNode>())!["activities"]![0]!["text"];

    private Task<HttpResponseMessage> PostAsync(JsonObject activity) => server.Client.PostAsync("api/messages", Body(activity));
}
