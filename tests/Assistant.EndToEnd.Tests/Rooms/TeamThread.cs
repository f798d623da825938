using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>A person in a team's thread behind the Bot Framework endpoint; the channel's own service is a stub on loopback.</summary>
internal sealed class TeamThread(AppServer server, string person) : IAsyncDisposable
{
    private readonly StubConnector connector = new();
    private int said;

    /// <summary>Says it and reads the answer.</summary>
    public async Task<string> SayAsync(string text)
    {
        using var taken = await server.Client.PostAsJsonAsync("api/messages", new JsonObject
        {
            ["type"] = "message",
            ["id"] = $"thread-{++said}",
            ["channelId"] = "team",
            ["serviceUrl"] = connector.Address.ToString(),
            ["conversation"] = new JsonObject { ["id"] = "invented-thread" },
            ["from"] = new JsonObject { ["id"] = "u-" + person, ["name"] = person },
            ["recipient"] = new JsonObject { ["id"] = "bot", ["name"] = "Coldwalk" },
            ["text"] = text,
        });
        Assert.True(taken.IsSuccessStatusCode, $"{taken.StatusCode}");
        return (string)connector.Take().Activity["text"]!;
    }

    public ValueTask DisposeAsync() => connector.DisposeAsync();
}
