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
    public async Task Who_answers_in_the_room_answers_for_the_page()
    {
        await using var scene = await RoomScene.OpenAsync("lee");
        using var lee = await scene.SitAsync("lee");
        await scene.Server.InitializeAsync();
        await lee.UntilInAsync(Coldwalk);
        var kim = await phone.NewPageAsync(server: scene.Server, person: "Kim");
        await Talk.OpenDemoAsync(kim);
        await Talk.UntilAskedAsync(kim, "setpoint");

        var joined = await SayAsync(lee, $"Coldwalk: join {await CodeAsync(scene.Server, kim)}");
        Assert.Contains("You are on the visit", joined.Text, StringComparison.Ordinal);
        await SayAsync(lee, "Coldwalk: 4");

        await Assertions.Expect(kim.Locator("#log .other").Last).ToContainTextAsync("Lee");
        await Assertions.Expect(kim.Locator("#ask")).ToHaveAttributeAsync("data-asked", "differential");
        await Phone.ShootAsync(kim, "room-and-page");
    }

    private static async Task<string> CodeAsync(AppServer server, IPage page)
    {
        var id = VisitPattern().Match(page.Url).Value;
        return (string)(await server.Client.GetFromJsonAsync<JsonNode>($"api/visits/{id}/share"))!["code"]!;
    }

    [GeneratedRegex(@"[0-9a-f-]{36}")]
    private static partial Regex VisitPattern();
}
