using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>A phone that has a microphone, and whose owner says no when the page asks for it: at the prompt, or for good in the browser's settings.</summary>
[Collection(PhoneGroup.Name)]
public sealed class DeniedMicrophoneTests(Phone phone)
{
    [Theory]
    [InlineData(false, "prompt")]
    [InlineData(true, "denied")]
    public async Task Denied_the_microphone_one_line_says_what_to_do_and_the_chat_goes_on(bool forGood, string standing)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-sync", "--use-fake-device-for-media-stream", "--deny-permission-prompts"],
        });
        var context = await browser.NewContextAsync(new() { BaseURL = phone.Server.Address.ToString(), ViewportSize = new() { Width = Phone.Width, Height = Phone.Height }, HasTouch = true });
        var page = await TalkingPhone.AtFirstReadingAsync(await context.NewPageAsync());
        if (forGood)
        {
            await DenyAsync(page);
        }

        Assert.Equal(standing, await page.EvaluateAsync<string>("async () => (await navigator.permissions.query({ name: 'microphone' })).state"));
        Assert.Contains("audioinput", await page.EvaluateAsync<string>("async () => (await navigator.mediaDevices.enumerateDevices()).map(d => d.kind).join()"), StringComparison.Ordinal);

        await page.Locator("#voice-open").ClickAsync();

        await Assertions.Expect(page.Locator("#voice-note")).ToHaveTextAsync("The microphone is not allowed for this page. Allow it in the browser's settings, or type: the chat goes on.");
        await Assertions.Expect(page.Locator("#voice-said")).Not.ToBeEmptyAsync();
        await Phone.ShootAsync(page, "voice-denied-" + standing);
        await page.Locator("#voice-leave").ClickAsync();
        await Talk.SayAsync(page, "9");
    }

    // As the owner's own setting does; the automation's way to take leaves away only puts them back to asking.
    private static async Task DenyAsync(IPage page)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        var target = await session.SendAsync("Target.getTargetInfo");
        await session.SendAsync("Browser.setPermission", new()
        {
            ["permission"] = new Dictionary<string, object> { ["name"] = "microphone" },
            ["setting"] = "denied",
            ["origin"] = new Uri(page.Url).GetLeftPart(UriPartial.Authority),
            ["browserContextId"] = target!.Value.GetProperty("targetInfo").GetProperty("browserContextId").GetString()!,
        });
    }
}
