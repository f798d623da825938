using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>Several people have one visit open: each sees it as it happens, with who said what.</summary>
[Collection(PhoneGroup.Name)]
public class LiveTests(Phone phone)
{
    [Fact]
    public async Task What_one_says_the_other_sees_at_once_with_the_name_and_the_next_question()
    {
        var kim = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(kim);
        var lee = await phone.NewPageAsync(person: "Lee");
        await lee.GotoAsync(kim.Url);
        await Assertions.Expect(lee.Locator("#ask")).Not.ToBeEmptyAsync();

        await Talk.UntilAskedAsync(kim, "box_temperature");
        await Assertions.Expect(lee.Locator("#ask")).ToHaveAttributeAsync("data-asked", "box_temperature");
        await Talk.AnsweredAsync(lee, () => Talk.SayAsync(kim, "9"));

        await Assertions.Expect(lee.Locator("#log .other").Last).ToContainTextAsync("Kim");
        await Assertions.Expect(lee.Locator("#log .other").Last).ToContainTextAsync("9 °C");
        await Assertions.Expect(lee.Locator("#ask")).ToHaveAttributeAsync("data-asked", await Talk.AskedAsync(kim));

        await Talk.AnsweredAsync(kim, () => Talk.SayAsync(lee, "9.2"));
        await Assertions.Expect(kim.Locator("#log .other").Last).ToContainTextAsync("Lee");
        await Phone.ShootAsync(kim, "two-people");
    }

    [Fact]
    public async Task After_a_lost_line_what_was_missed_comes_once_and_nothing_twice()
    {
        var kim = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(kim);
        var lee = await phone.NewPageAsync(person: "Lee");
        await lee.GotoAsync(kim.Url);
        await Assertions.Expect(lee.Locator("#ask")).Not.ToBeEmptyAsync();
        await lee.Context.SetOfflineAsync(true);
        await Assertions.Expect(lee.Locator("#line")).ToContainTextAsync("No connection");
        await Talk.UntilAskedAsync(kim, "setpoint");

        await lee.Context.SetOfflineAsync(false);

        await Assertions.Expect(lee.Locator("#ask")).ToHaveAttributeAsync("data-asked", "setpoint");
        await Assertions.Expect(lee.Locator("#line")).ToBeHiddenAsync();
        Assert.Equal(await kim.Locator("#log .heard").CountAsync(), await lee.Locator("#log .heard").CountAsync());
    }

    [Fact]
    public async Task The_stream_goes_on_after_the_last_entry_seen()
    {
        var id = Guid.NewGuid().ToString();
        await phone.Server.PostAsync("/api/visits", new { id, demo = true });
        foreach (var text in new[] { "ok", "9 degC", "9.2 degC" })
        {
            await phone.Server.PostAsync($"/api/visits/{id}/messages", new { id = Guid.NewGuid().ToString(), text, by = "Kim" });
        }

        var all = await ReadAsync(id, lastSeen: null);
        var second = all.Where(e => e.Kind == "turn").ElementAt(1).Id;
        var rest = await ReadAsync(id, lastSeen: second);

        Assert.Equal(["ok", "9 degC", "9.2 degC"], all.Where(e => e.Kind == "turn").Select(e => (string?)e.Data["text"]));
        Assert.Equal("9.2 degC", (string?)Assert.Single(rest, e => e.Kind == "turn").Data["text"]);
        Assert.Equal(all[^1].Id, rest[^1].Id);
    }

    [Fact]
    public async Task A_reading_that_waited_is_kept_beside_the_one_that_came_from_elsewhere_meanwhile()
    {
        var kim = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(kim);
        var lee = await phone.NewPageAsync(person: "Lee");
        await Talk.UntilAskedAsync(kim, "setpoint");
        await lee.GotoAsync(kim.Url);
        await Assertions.Expect(lee.Locator("#ask")).ToHaveAttributeAsync("data-asked", "setpoint");
        await lee.Context.SetOfflineAsync(true);
        await lee.Locator("#text").FillAsync("5");
        await lee.Locator("#text").PressAsync("Enter");
        await Assertions.Expect(lee.Locator("#ask")).ToContainTextAsync("Kept.");
        await Phone.ShootAsync(lee, "answer-waits");
        await Talk.SayAsync(kim, "4");

        await lee.Context.SetOfflineAsync(false);

        await Assertions.Expect(lee.Locator("#log .heard").Filter(new() { HasText = "Kim read 4 °C meanwhile" })).ToBeVisibleAsync();
        await Assertions.Expect(kim.Locator("#ask")).ToContainTextAsync("Lee says 5 °C, Kim says 4 °C. Which one counts?");
        await kim.Locator("#show-readings").ClickAsync();
        var reading = kim.Locator("#readings-list .reading").Filter(new() { HasText = "setpoint" });
        await Assertions.Expect(reading).ToContainTextAsync("4 °C");
        await Assertions.Expect(reading).ToContainTextAsync("also 5 °C, Lee");
        await Phone.ShootAsync(kim, "reading-beside");
        await Talk.SayAsync(lee, "Kim's");
        await Assertions.Expect(lee.Locator("#ask")).ToHaveAttributeAsync("data-asked", "differential");
    }

    private async Task<List<(string Kind, string Id, JsonNode Data)>> ReadAsync(string id, string? lastSeen)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/visits/{id}/events");
        if (lastSeen is not null)
        {
            request.Headers.Add("Last-Event-ID", lastSeen);
        }

        using var response = await phone.Server.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        using var reader = new StreamReader(await response.Content.ReadAsStreamAsync());
        var entries = new List<(string, string, JsonNode)>();
        string kind = "", data = "", number = "";
        while (await reader.ReadLineAsync() is { } line)
        {
            (kind, data, number) = line.Split(": ", 2) switch
            {
                ["event", var value] => (value, data, number),
                ["data", var value] => (kind, value, number),
                ["id", var value] => (kind, data, value),
                _ => (kind, data, number),
            };
            if (line.Length == 0)
            {
                entries.Add((kind, number, JsonNode.Parse(data)!));
                if (kind == "visit")
                {
                    break;
                }
            }
        }

        return entries;
    }
}
