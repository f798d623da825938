using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;
using static Assistant.EndToEnd.Tests.Rooms.RoomScene;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>People on one visit, each by another channel.</summary>
[Collection(PhoneGroup.Name)]
public sealed partial class OneVisitTests(Phone phone)
{
    [Fact]
    public async Task Three_people_on_the_page_in_a_room_and_in_a_teams_thread_have_one_visit_and_see_the_same_of_it()
    {
        await using var scene = await RoomScene.OpenAsync("lee");
        await using var thread = new TeamThread(scene.Server, "Sam");
        var lee = await scene.SitAsync("lee");
        await scene.Server.InitializeAsync();
        await lee.UntilInAsync(Coldwalk);
        var kim = await phone.NewPageAsync(server: scene.Server, person: "Kim");
        await Talk.OpenDemoAsync(kim);
        await Talk.UntilAskedAsync(kim, "setpoint");
        var code = await CodeAsync(scene.Server, kim);
        var before = (await TurnsAsync(scene.Server, kim)).Count;

        Assert.Contains("You are on the visit", (await SayAsync(lee, $"Coldwalk: join {code}")).Text, StringComparison.Ordinal);
        Assert.Contains("You are on the visit", await thread.SayAsync($"join {code}"), StringComparison.Ordinal);
        await SayAsync(lee, "Coldwalk: 4");
        await SeenAsync(kim, "Lee", "differential");
        await thread.SayAsync("2");
        await SeenAsync(kim, "Sam", "calling_for_cooling");

        // The chat server is gone for a while, and the visit goes on without the room.
        scene.Prosody.Kill();
        lee.Dispose();
        await Talk.SayAsync(kim, "yes");
        await thread.SayAsync("evaporator fans all running");
        await scene.Prosody.StartAsync();
        lee = await scene.SitAsync("lee");
        await lee.UntilInAsync(Coldwalk);
        await SayAsync(lee, "Coldwalk: door good");
        await Assertions.Expect(kim.Locator("#log .other").Last).ToContainTextAsync("Lee");

        Assert.Equal(
            ["Lee xmpp: 4", "Sam team: 2", "Kim page: yes", "Sam team: evaporator fans all running", "Lee xmpp: door good"],
            (await TurnsAsync(scene.Server, kim)).Skip(before));
        var (room, team) = (await SayAsync(lee, "Coldwalk: status"), await thread.SayAsync("status"));
        await Talk.SayAsync(kim, "status");
        var stands = room.Text.Split('\n')[0];
        Assert.Contains("10 things are known", stands, StringComparison.Ordinal);
        Assert.StartsWith(stands, team, StringComparison.Ordinal);
        await Assertions.Expect(kim.Locator("#log .spoken").Last).ToContainTextAsync(stands);
        await Phone.ShootAsync(kim, "three-channels");
        lee.Dispose();
    }

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
