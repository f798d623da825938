using System.Text.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public class OutboxTests(Phone phone)
{
    [Fact]
    public async Task What_is_said_without_a_signal_is_kept_and_sent_when_it_is_back()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await page.Context.SetOfflineAsync(true);
        await page.Locator("#text").FillAsync("ok");
        await page.Locator("#text").PressAsync("Enter");
        await Assertions.Expect(page.Locator("#outbox")).ToContainTextAsync("1 kept on this phone");
        await Phone.ShootAsync(page, "no-signal");

        await Talk.AnsweredAsync(page, () => page.Context.SetOfflineAsync(false));

        await Assertions.Expect(page.Locator("#outbox")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator("#log .waiting")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_message_whose_answer_was_lost_on_the_way_counts_once()
    {
        var page = await phone.NewPageAsync(installs: false);
        await Talk.OpenDemoAsync(page);
        var lost = 0;
        await page.RouteAsync("**/messages", async route =>
        {
            if (lost++ == 0)
            {
                await route.FetchAsync();
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });

        await Talk.SayAsync(page, "ok");
        await Assertions.Expect(page.Locator("#outbox")).ToBeVisibleAsync();

        var visit = new Uri(page.Url).Query.Split('=')[1];
        var turns = JsonNode.Parse(await phone.Server.Client.GetStringAsync($"/api/visits/{visit}"))!["turns"]!.AsArray();
        await Assertions.Expect(page.Locator("#outbox")).ToBeHiddenAsync();
        Assert.True(lost >= 2);
        Assert.Equal("ok", (string?)Assert.Single(turns)!["text"]);
    }

    [Fact]
    public async Task A_picture_from_the_camera_is_in_the_report_with_its_caption()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        var shot = await page.ScreenshotAsync();
        await page.Locator("#camera").SetInputFilesAsync(new FilePayload { Name = "coil.png", MimeType = "image/png", Buffer = shot });
        await page.Locator("#caption-text").FillAsync("Coil face, packed with fluff");
        await Phone.ShootAsync(page, "picture");

        await page.RunAndWaitForResponseAsync(() => page.Locator("#caption-text").PressAsync("Enter"), response => response.Url.Contains("/pictures/", StringComparison.Ordinal) && response.Request.Method == "POST" && response.Ok);

        await Assertions.Expect(page.Locator("#log .waiting")).ToHaveCountAsync(0);
        var visit = new Uri(page.Url).Query.Split('=')[1];
        using var report = JsonDocument.Parse(await phone.Server.Client.GetStringAsync($"/visits/{visit}/report.json"));
        Assert.Contains("Coil face, packed with fluff", report.RootElement.ToString(), StringComparison.Ordinal);
    }
}
