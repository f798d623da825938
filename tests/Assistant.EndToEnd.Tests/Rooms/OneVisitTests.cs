using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;
using Xunit.Abstractions;
using static Assistant.EndToEnd.Tests.Rooms.RoomScene;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>People on one visit, each by another channel.</summary>
[Collection(PhoneGroup.Name)]
public sealed partial class OneVisitTests(Phone phone, ITestOutputHelper output)
{
    private const string Verdict = "the condenser can not get rid of its heat";

    [Fact]
    public async Task Three_people_on_the_page_in_a_room_and_in_a_teams_thread_have_one_visit_and_see_the_same_of_it()
    {
        await using var scene = await RoomScene.OpenAsync("lee", "robin");
        await using var thread = new TeamThread(scene.Server, "Sam");
        var (lee, robin) = (await scene.SitAsync("lee"), await scene.SitAsync("robin"));
        await scene.Server.InitializeAsync();
        await lee.UntilInAsync(Coldwalk);
        var kim = await phone.NewPageAsync(server: scene.Server, person: "Kim");
        await Talk.OpenDemoAsync(kim);
        await Talk.UntilAskedAsync(kim, "setpoint");
        var code = await CodeAsync(scene.Server, kim);
        var before = (await TurnsAsync(scene.Server, kim)).Count;
        lee.Say($"Coldwalk: join {code}");
        await ToldAsync(lee, "You are on the visit");
        await thread.SayAsync($"join {code}");
        await thread.ReadAsync("You are on the visit");

        // Told where it was not said, with who and from where; two within moments are answered in one post; small talk is theirs.
        lee.Say("4");
        await SeenAsync(kim, "Lee", "differential");
        await thread.ReadAsync("Lee in the chat: setpoint 4");
        await thread.SayAsync("2");
        await SeenAsync(kim, "Sam", "calling_for_cooling");
        await ToldAsync(lee, "Sam in the team's chat: differential 2");
        lee.Say("who brings the coffee today then?");
        lee.Say("door good");
        robin.Say("product 7");
        Assert.Contains("Door: good", (await ToldAsync(lee, "Product temperature 7")).Text, StringComparison.Ordinal);

        // The chat server is gone for a while, and the visit goes on without the room.
        await scene.AnsweredAsync(4, () => Shown(lee));
        scene.Prosody.Kill();
        lee.Dispose();
        robin.Dispose();
        await Talk.SayAsync(kim, "yes");
        await thread.SayAsync("evaporator fans all running");
        await thread.ReadAsync("Evaporator fans: all");
        await scene.Prosody.StartAsync();
        lee = await scene.SitAsync("lee", lines: 100);
        await lee.UntilInAsync(Coldwalk);
        var caughtUp = await ToldAsync(lee, "Kim on the page: calling for cooling");
        Assert.Contains("Sam in the team's chat: evaporator fans", caughtUp.Text, StringComparison.Ordinal);

        Assert.Equal(
            ["Lee xmpp: 4", "Sam team: 2", "Lee xmpp: door good", "Robin xmpp: product 7", "Kim page: yes", "Sam team: evaporator fans all running"],
            (await TurnsAsync(scene.Server, kim)).Skip(before).OrderBy(t => t.StartsWith("Robin", StringComparison.Ordinal) ? 3 : t.EndsWith("good", StringComparison.Ordinal) ? 2 : t.EndsWith(": 4", StringComparison.Ordinal) || t.EndsWith(": 2", StringComparison.Ordinal) ? 1 : 4));

        // The verdict is found on the page and stands in each room once.
        await Talk.UntilVerdictAsync(kim, answer => Talk.SayAsync(kim, answer));
        await ToldAsync(lee, Verdict);
        await thread.ReadAsync(Verdict);
        lee.Say("Coldwalk: status");
        await ToldAsync(lee, "Known so far: ");
        await thread.SayAsync("Coldwalk, status");
        var stands = (await thread.ReadAsync("Known so far: ")).Split('\n')[0];
        await Talk.SayAsync(kim, "status");
        await Assertions.Expect(kim.Locator("#log .spoken").Last).ToContainTextAsync(stands);
        await Phone.ShootAsync(kim, "three-channels");

        var posts = lee.Screen.Where(l => l.From == Coldwalk).Select(l => l.Text).ToList();
        Assert.Equal(posts.Distinct().Count(), posts.Count);
        foreach (var all in new[] { posts, thread.Posts })
        {
            Assert.Single(all, p => p.Contains("VERDICT", StringComparison.Ordinal));
            Assert.DoesNotContain(all, p => p.Contains("coffee", StringComparison.Ordinal) || p.Contains("did not understand", StringComparison.Ordinal));
        }

        // One summary in the thread, changed in place.
        Assert.Single(thread.Posts, p => p.StartsWith("Cheese room (invented)", StringComparison.Ordinal));
        var summary = thread.Connector.Calls.Single(c => c.Method == "POST" && c.Text.StartsWith("Cheese room (invented)", StringComparison.Ordinal)).Id;
        Assert.NotEmpty(thread.Edits);
        Assert.All(thread.Edits, e => Assert.Equal(summary, e.Id));
        Assert.Contains(Verdict, thread.Edits[^1].Text, StringComparison.Ordinal);
        output.WriteLine($"{posts.Count} posts in the room, {thread.Posts.Count} in the thread and {thread.Edits.Count} changes of its summary");
        output.WriteLine(string.Join("\n--\n", thread.Posts));
        lee.Dispose();
    }

    private static Task<ChatPerson.Line> ToldAsync(ChatPerson person, string words) => person.ReadAsync(l => l.From == Coldwalk && l.Text.Contains(words, StringComparison.Ordinal));

    private static async Task SeenAsync(IPage page, string by, string asked)
    {
        await Assertions.Expect(page.Locator("#log .other").Last).ToContainTextAsync(by);
        await Assertions.Expect(page.Locator("#ask")).ToHaveAttributeAsync("data-asked", asked);
    }

    /// <summary>What was said on the visit, by whom and from where.</summary>
    private static async Task<List<string>> TurnsAsync(AppServer server, IPage page) =>
        [.. (await server.Client.GetFromJsonAsync<JsonNode>($"api/visits/{VisitPattern().Match(page.Url).Value}"))!["turns"]!.AsArray()
            .Where(t => t!["text"] is not null).Select(t => $"{t!["by"]} {t["channel"]}: {t["text"]}")];

    private static async Task<string> CodeAsync(AppServer server, IPage page)
    {
        var id = VisitPattern().Match(page.Url).Value;
        return (string)(await server.Client.GetFromJsonAsync<JsonNode>($"api/visits/{id}/share"))!["code"]!;
    }

    [GeneratedRegex(@"[0-9a-f-]{36}")]
    private static partial Regex VisitPattern();
}
