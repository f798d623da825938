using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>axe-core finds nothing serious or critical on any screen, by day and by night; question and verdict stand at 7:1.</summary>
[Collection(PhoneGroup.Name)]
public class AccessibilityTests(Phone phone)
{
    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task No_screen_has_a_serious_violation(ColorScheme scheme)
    {
        var page = await phone.NewPageAsync(scheme);
        await page.GotoAsync("/");
        await Assertions.Expect(page.Locator("#start")).ToBeVisibleAsync();
        await Phone.ShootAsync(page, $"start-{scheme}");
        await PageChecks.AccessibleAsync(page);
        await Talk.OpenDemoAsync(page);
        await Phone.ShootAsync(page, $"first-{scheme}");
        await PageChecks.AccessibleAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await Phone.ShootAsync(page, $"number-{scheme}");
        await PageChecks.AccessibleAsync(page);
        await Talk.UntilVerdictAsync(page, answer => Talk.SayAsync(page, answer));
        await page.Locator("#verdict summary").ClickAsync();
        await PageChecks.AccessibleAsync(page);
        foreach (var sheet in new[] { "readings", "more" })
        {
            await page.Locator($"#show-{sheet}").ClickAsync();
            await PageChecks.AccessibleAsync(page);
            await page.Keyboard.PressAsync("Escape");
        }
    }
}
