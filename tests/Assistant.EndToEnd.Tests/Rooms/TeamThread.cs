using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>A team's thread behind the Bot Framework endpoint; the channel's own service is a stub on loopback, which shows what stands in the thread.</summary>
internal sealed class TeamThread(AppServer server, string person) : IAsyncDisposable
{
    public const string Id = "invented-thread";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private int said;

    public StubConnector Connector { get; } = new();

    /// <summary>What was posted, as it was posted.</summary>
    public IReadOnlyList<string> Posts => [.. Connector.Calls.Where(c => c.Method == "POST").Select(c => c.Text)];

    /// <summary>How the posts were changed, in the order of the changes, with the id of the post.</summary>
    public IReadOnlyList<(string Id, string Text)> Edits => [.. Connector.Calls.Where(c => c.Method == "PUT").Select(c => (c.Path.Split('/')[^1], c.Text))];

    /// <summary>Says it in the thread.</summary>
    /// <param name="from">The account, where it is not the person's.</param>
    public async Task SayAsync(string text, string? from = null, HttpStatusCode expected = HttpStatusCode.OK)
    {
        using var taken = await PostAsync(new JsonObject { ["type"] = "message", ["id"] = $"thread-{++said}", ["text"] = text, ["from"] = new JsonObject { ["id"] = from ?? "u-" + person, ["name"] = person } });
        Assert.Equal(expected, taken.StatusCode);
    }

    /// <summary>The bot is taken out of the thread.</summary>
    public async Task SendOutAsync()
    {
        using var taken = await PostAsync(new JsonObject { ["type"] = "conversationUpdate", ["id"] = $"thread-{++said}", ["membersRemoved"] = new JsonArray(new JsonObject { ["id"] = "bot" }) });
        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
    }

    /// <summary>Waits for a post with these words that was not there before.</summary>
    public async Task<string> ReadAsync(string words, int from = 0)
    {
        for (var until = DateTimeOffset.UtcNow + Patience; ; await Task.Delay(50))
        {
            if (Posts.Skip(from).FirstOrDefault(p => p.Contains(words, StringComparison.Ordinal)) is { } post)
            {
                return post;
            }

            Assert.True(DateTimeOffset.UtcNow < until, $"\"{words}\" is not in the thread: {string.Join(" | ", Posts)}");
        }
    }

    public ValueTask DisposeAsync() => Connector.DisposeAsync();

    private Task<HttpResponseMessage> PostAsync(JsonObject activity)
    {
        activity["channelId"] = "team";
        activity["serviceUrl"] = Connector.Address.ToString();
        activity["conversation"] = new JsonObject { ["id"] = Id, ["isGroup"] = true };
        activity["recipient"] = new JsonObject { ["id"] = "bot", ["name"] = "Coldwalk" };
        return server.Client.PostAsJsonAsync("api/messages", activity);
    }
}
