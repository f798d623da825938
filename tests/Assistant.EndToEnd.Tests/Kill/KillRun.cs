using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;

namespace Assistant.EndToEnd.Tests.Kill;

/// <summary>Kills the program at random moments of a conversation (SIGKILL) and checks what is there after the restart.</summary>
internal sealed class KillRun(AppServer server, Random random)
{
    /// <summary>Of a visit's turns so many are shown.</summary>
    private const int Shown = 60;

    public int Acknowledged { get; private set; }

    /// <summary>Messages that were stored though their answer was never seen.</summary>
    public int StoredUnseen { get; private set; }

    /// <summary>One visit: talk until the kill, start again, and find every acknowledged answer and the same question.</summary>
    public async Task RoundAsync(int round)
    {
        var visit = $"kill-{round:000000}";
        using var opened = await server.Client.PostAsJsonAsync("/api/visits", new { id = visit, demo = true });
        var ask = await AskOfAsync(opened);
        var answered = new List<(string Id, string Reply)>();
        string? unanswered = null;
        var kill = Task.Run(async () =>
        {
            await Task.Delay(random.Next(1, 400));
            await server.KillAsync();
        });
        try
        {
            for (var turn = 0; ; turn++)
            {
                unanswered = $"{visit}-{turn:0000}";
                using var response = await server.Client.PostAsJsonAsync(
                    $"/api/visits/{visit}/messages", new { id = unanswered, by = "kim", text = turn % 3 == 2 ? "why" : Answers.To(ask.Fact) });
                ask = await AskOfAsync(response);
                answered.Add((unanswered, ask.Reply));
            }
        }
        catch (Exception cut) when (cut is HttpRequestException or IOException)
        {
            // The program is gone.
        }

        await kill;
        await server.InitializeAsync();
        await CheckAsync(visit, ask, answered, unanswered!);
        Acknowledged += answered.Count;
    }

    private async Task CheckAsync(string visit, Asked last, List<(string Id, string Reply)> answered, string unanswered)
    {
        var view = await server.Client.GetFromJsonAsync<JsonNode>($"/api/visits/{visit}");
        var turns = view!["turns"]!.AsArray().ToDictionary(t => (string)t!["id"]!, t => t!["reply"]!.ToJsonString());
        var stored = turns.TryGetValue(unanswered, out var unseen);
        foreach (var (id, reply) in answered.TakeLast(stored ? Shown - 1 : Shown))
        {
            Assert.Equal(reply, turns.GetValueOrDefault(id));
        }

        // What is no longer shown is still there: said again, it is answered as it was.
        foreach (var (id, reply) in answered.SkipLast(Shown - 1).Take(1))
        {
            using var earlier = await server.Client.PostAsJsonAsync($"/api/visits/{visit}/messages", new { id, by = "kim", text = "ok" });
            Assert.Equal(reply, (await AskOfAsync(earlier)).Reply);
        }

        StoredUnseen += stored ? 1 : 0;
        var expected = stored ? (string?)JsonNode.Parse(unseen!)!["asked"] : last.Fact;
        Assert.Equal(expected, (string?)view["reply"]!["asked"]);

        // Said again with the same id, it is answered as it was, or for the first time.
        using var again = await server.Client.PostAsJsonAsync($"/api/visits/{visit}/messages", new { id = unanswered, by = "kim", text = Answers.To(last.Fact) });
        var reply2 = await AskOfAsync(again);
        Assert.True(!stored || reply2.Reply == unseen);
    }

    private static async Task<Asked> AskOfAsync(HttpResponseMessage response)
    {
        response.EnsureSuccessStatusCode();
        var reply = (await response.Content.ReadFromJsonAsync<JsonNode>())!["reply"]!;
        return new((string?)reply["asked"], reply.ToJsonString());
    }

    private sealed record Asked(string? Fact, string Reply);
}
