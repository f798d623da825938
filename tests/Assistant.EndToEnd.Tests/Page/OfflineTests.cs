using System.Diagnostics;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>Without a signal: the page opens, shows the visit, takes readings and pictures, and brings each over once, in order.</summary>
[Collection(PhoneGroup.Name)]
public class OfflineTests(Phone phone)
{
    [Fact]
    public async Task Five_readings_and_a_picture_without_a_signal_arrive_once_and_in_order_after_the_program_was_killed_and_started_again()
    {
        using var server = new AppServer();
        await server.InitializeAsync();
        var page = await phone.NewPageAsync(server: server, person: "Kim");
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await Talk.InstalledAsync(page);
        await page.Context.SetOfflineAsync(true);

        await SendAsync(page, "4");
        await EnterAsync(page, "head pressure", "24");
        await EnterAsync(page, "suction pressure", "3.6");
        await page.Locator("#camera").SetInputFilesAsync(new FilePayload { Name = "coil.png", MimeType = "image/png", Buffer = await page.ScreenshotAsync() });
        await page.Locator("#caption-choices").GetByRole(AriaRole.Button, new() { Name = "Nameplate" }).ClickAsync();
        await Phone.ShootAsync(page, "picture-caption");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the picture" }).ClickAsync();
        await EnterAsync(page, "air onto the condenser", "31");
        await EnterAsync(page, "condenser coil", "dirty");
        await Assertions.Expect(page.Locator("#outbox")).ToContainTextAsync("6 kept on this phone");
        await Phone.ShootAsync(page, "six-waiting");
        await server.KillAsync();
        await page.Context.SetOfflineAsync(false);
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#log .waiting")).ToHaveCountAsync(6);
        await server.StartAgainAsync();

        await Assertions.Expect(page.Locator("#outbox")).ToBeHiddenAsync(new() { Timeout = 60_000 });

        var visit = new Uri(page.Url).Query.Split('=')[1];
        var entries = JsonNode.Parse(await server.Client.GetStringAsync($"/api/visits/{visit}"))!["turns"]!.AsArray();
        var last = entries.TakeLast(6).Select(e => (string?)e!["text"] ?? $"picture: {e["caption"]}");
        Assert.Equal(["4 °C", "head pressure 24 bar", "suction pressure 3.6 bar", "picture: Nameplate", "ambient 31 °C", "condenser coil dirty"], last);
        var readings = JsonNode.Parse(await server.Client.GetStringAsync($"/api/visits/{visit}"))!["readings"]!.AsArray().ToDictionary(r => (string)r!["fact"]!, r => (string?)r!["value"]);
        Assert.Equal(("4 °C", "24 bar", "3.6 bar", "31 °C", "dirty"), (readings["setpoint"], readings["discharge_pressure"], readings["suction_pressure"], readings["ambient_temperature"], readings["condenser_coil"]));
        await page.Context.CloseAsync();
        await server.KillAsync();
    }

    [Fact]
    public async Task Once_installed_the_page_and_the_visit_open_without_a_signal_within_a_second_and_a_half()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        var asked = await page.Locator("#ask").InnerTextAsync();
        await Talk.InstalledAsync(page);
        await page.Context.SetOfflineAsync(true);
        var address = page.Url;
        await page.GotoAsync("about:blank");

        var watch = Stopwatch.StartNew();
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Commit });
        await Assertions.Expect(page.Locator("#ask")).ToHaveTextAsync(asked);
        watch.Stop();

        await Assertions.Expect(page.Locator("#pad")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#line")).ToContainTextAsync("No connection");
        await Phone.ShootAsync(page, "opened-offline");
        Talk.Note("opened offline after installation", watch.Elapsed);
        Assert.InRange(watch.ElapsedMilliseconds, 0, 1500);
    }

    [Fact]
    public async Task What_has_not_gone_out_yet_is_taken_back_by_undo_and_never_sent()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await page.Context.SetOfflineAsync(true);
        await SendAsync(page, "40");
        await Assertions.Expect(page.Locator("#outbox")).ToContainTextAsync("1 kept");

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();

        await Assertions.Expect(page.Locator("#ask")).ToHaveAttributeAsync("data-asked", "setpoint");
        await Assertions.Expect(page.Locator("#log .waiting")).ToHaveCountAsync(0);
        await page.Context.SetOfflineAsync(false);
        await Talk.SayAsync(page, "4");
        await Assertions.Expect(page.Locator("#log")).Not.ToContainTextAsync("40");
    }

    private static async Task SendAsync(IPage page, string text)
    {
        await page.Locator("#text").FillAsync(text);
        await page.Locator("#text").PressAsync("Enter");
    }

    private static async Task EnterAsync(IPage page, string label, string value)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter another reading" }).ClickAsync();
        await page.Locator("#facts-list").GetByRole(AriaRole.Button, new() { Name = label, Exact = true }).ClickAsync();
        var choice = page.Locator("#entry-choices").GetByRole(AriaRole.Button, new() { Name = value, Exact = true });
        if (await choice.CountAsync() > 0)
        {
            await choice.ClickAsync();
            return;
        }

        await page.Locator("#entry-text").FillAsync(value);
        await page.Locator("#entry-text").PressAsync("Enter");
    }
}
