using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Assistant.EndToEnd.Tests.Rooms;

namespace Assistant.EndToEnd.Tests.Bot;

/// <summary>What the bot posts in a team's thread unasked, with its service there, away, and gone for good.</summary>
public sealed class BotRoomsTests : IAsyncLifetime, IDisposable
{
    private readonly string visit = Guid.NewGuid().ToString();
    private readonly AppServer server = new();
    private TeamThread thread = null!;
    private string asked = "";

    public async Task InitializeAsync()
    {
        await server.InitializeAsync();
        thread = new(server, "Sam");
        asked = Asked(await server.PostAsync("api/visits", new { id = visit, demo = true }));
        await UntilAskedAsync("setpoint");
        await thread.SayAsync($"join {(string)(await server.Client.GetFromJsonAsync<JsonNode>($"api/visits/{visit}/share"))!["code"]!}");
        await thread.ReadAsync("You are on the visit");
    }

    public async Task DisposeAsync()
    {
        await server.DisposeAsync();
        await thread.DisposeAsync();
    }

    public void Dispose() => server.Dispose();

    [Fact]
    public async Task Who_joined_in_a_thread_and_said_nothing_yet_is_named_by_who()
    {
        using var answer = await server.Client.PostAsJsonAsync($"api/visits/{visit}/messages", new { id = Guid.NewGuid().ToString(), text = "who", by = "kim" });
        Assert.Contains("Sam (on site, not heard yet)", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_could_not_be_posted_while_the_service_was_away_is_posted_once_after_a_restart_of_the_program()
    {
        thread.Connector.Status = HttpStatusCode.ServiceUnavailable;
        await PageAsync("4");
        await Task.Delay(3000);
        await server.KillAsync();
        thread.Connector.Status = HttpStatusCode.OK;
        await server.StartAgainAsync();

        await thread.ReadAsync("Kim on the page: setpoint 4");
        await PageAsync("2");
        await thread.ReadAsync("Kim on the page: differential 2");

        Assert.Single(thread.Posts, p => p.Contains("setpoint 4", StringComparison.Ordinal) && !p.Contains("Read so far", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_the_service_says_that_the_conversation_is_gone_it_is_off_its_visit_and_nothing_more_is_sent_there()
    {
        thread.Connector.Status = HttpStatusCode.NotFound;
        await PageAsync("4");
        await LoggedAsync("a conversation on team is gone (NotFound)");
        thread.Connector.Status = HttpStatusCode.OK;
        var before = thread.Connector.Calls.Count;

        await PageAsync("2");
        await thread.SayAsync("status");
        await Task.Delay(4000);

        Assert.Equal(before, thread.Connector.Calls.Count);
    }

    [Fact]
    public async Task Taken_out_of_the_thread_it_writes_there_no_more()
    {
        await thread.SendOutAsync();
        await LoggedAsync("it was removed from a conversation on team");
        var before = thread.Connector.Calls.Count;

        await PageAsync("4");
        await Task.Delay(4000);

        Assert.Equal(before, thread.Connector.Calls.Count);
    }

    [Fact]
    public async Task Where_no_post_can_be_changed_the_summary_is_not_posted_at_every_reading()
    {
        await thread.ReadAsync("Read so far");
        thread.Connector.TakesChanges = false;
        foreach (var text in new[] { "4", "2", "yes" })
        {
            var before = thread.Posts.Count;
            await PageAsync(text);
            await thread.ReadAsync("Kim on the page", before);
        }

        Assert.Empty(thread.Edits);
        Assert.Single(thread.Posts, p => p.Contains("Read so far", StringComparison.Ordinal));
    }

    private async Task UntilAskedAsync(string fact)
    {
        for (var turn = 0; turn < 30 && asked != fact; turn++)
        {
            await PageAsync(Answers.To(asked));
        }

        Assert.Equal(fact, asked);
    }

    private async Task PageAsync(string text) => asked = Asked(await server.PostAsync($"api/visits/{visit}/messages", new { id = Guid.NewGuid().ToString(), by = "kim", text }));

    private static string Asked(JsonNode view) => (string?)view["reply"]!["asked"] ?? "";

    private async Task LoggedAsync(string words)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(30); !server.Errors.Contains(words, StringComparison.Ordinal); await Task.Delay(50))
        {
            Assert.True(DateTimeOffset.UtcNow < until, server.Errors);
        }
    }
}
