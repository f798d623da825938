using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>Every view of the page, by day and by night, on a phone and on a desk: nothing serious for axe, nothing small, nothing sideways.</summary>
[Collection(PhoneGroup.Name)]
public class ViewTests(Phone phone)
{
    [Theory]
    [InlineData(ColorScheme.Light, Phone.Width, Phone.Height)]
    [InlineData(ColorScheme.Dark, Phone.Width, Phone.Height)]
    [InlineData(ColorScheme.Light, 1280, 800)]
    public async Task Every_sheet_is_fit_for_gloves_and_for_axe(ColorScheme scheme, int width, int height)
    {
        var page = await phone.NewPageAsync(scheme, person: "Kim", width: width, height: height);
        await Talk.OpenDemoAsync(page);
        await CheckAsync(page, "visit", scheme, width);
        await Talk.UntilVerdictAsync(page, answer => Talk.SayAsync(page, answer));
        await CheckAsync(page, "verdict", scheme, width);
        await Talk.SayAsync(page, "suction pressure 3.6 bar");
        await page.Locator("#show-readings").ClickAsync();
        await CheckAsync(page, "readings", scheme, width);
        await page.Locator("#readings-list .reading").Filter(new() { HasText = "head pressure" }).First.ClickAsync();
        await CheckAsync(page, "entry", scheme, width);
        await page.Keyboard.PressAsync("Escape");
        foreach (var (button, ready) in new[]
        {
            ("other-reading", "#facts-list button >> nth=0"), ("quick-open", "#quick-refrigerant option >> nth=0"), ("plots-open", "#plots-list svg >> nth=0"),
            ("share-open", "#share-spoken:not(:empty)"),
        })
        {
            await page.Locator("#show-more").ClickAsync();
            await page.Locator($"#{button}").ClickAsync();
            await page.Locator(ready).WaitForAsync(new() { State = WaitForSelectorState.Attached });
            await CheckAsync(page, button, scheme, width);
            await page.Keyboard.PressAsync("Escape");
        }

        // No script runs in the report's frame, so axe can not look into it; what stands around it fits.
        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#report-open").ClickAsync();
        await Phone.ShootAsync(page, $"view-report-{scheme}-{width}");
        await PageChecks.FitsAsync(page);

        await page.GotoAsync("/");
        await Assertions.Expect(page.Locator("#find")).ToBeVisibleAsync();
        await CheckAsync(page, "start", scheme, width);
    }

    [Fact]
    public async Task The_plots_come_with_their_numbers_in_words()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilVerdictAsync(page, answer => Talk.SayAsync(page, answer));
        await Talk.SayAsync(page, "suction pressure 3.6 bar");
        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#plots-open").ClickAsync();

        var cycle = page.Locator("#plots-list details").First;
        await Assertions.Expect(cycle.Locator("svg")).ToBeVisibleAsync();
        await Assertions.Expect(cycle.Locator("p")).ToContainTextAsync("57");
    }

    [Fact]
    public async Task A_visit_is_joined_by_its_spoken_code()
    {
        var page = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#share-open").ClickAsync();
        await Assertions.Expect(page.Locator("#share-spoken")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#share-local")).ToContainTextAsync("no other phone reaches it");
        var code = await page.Locator("#share-spoken").InnerTextAsync();
        await page.Keyboard.PressAsync("Escape");
        var other = await phone.NewPageAsync();
        await other.GotoAsync("/");
        await other.Locator("#join-person").FillAsync("Lee");
        await other.Locator("#join-code").FillAsync(code);
        await other.Locator("#join-code").PressAsync("Enter");
        await Assertions.Expect(other.Locator("#ask")).ToHaveAttributeAsync("data-asked", "setpoint");

        await Talk.SayAsync(page, "who");
        await Assertions.Expect(page.Locator("#log .spoken").Last).ToContainTextAsync("Lee (on site, not heard yet)");
        await Talk.AnsweredAsync(page, () => Talk.SayAsync(other, "4"));

        await Assertions.Expect(page.Locator("#log .other").Last).ToContainTextAsync("Lee");
    }

    [Fact]
    public async Task A_phone_that_comes_by_the_link_is_asked_whose_it_is_and_one_that_was_told_is_not()
    {
        var page = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        var other = await phone.NewPageAsync();
        await other.GotoAsync(page.Url);
        await other.Locator("#naming-person").FillAsync("Lee");
        await CheckAsync(other, "naming", ColorScheme.Light, Phone.Width);
        await other.Locator("#naming-person").PressAsync("Enter");
        await Assertions.Expect(other.Locator("#naming")).ToBeHiddenAsync();

        await Talk.AnsweredAsync(page, () => Talk.SayAsync(other, "4"));

        await Assertions.Expect(page.Locator("#log .other").Last).ToContainTextAsync("Lee");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#naming")).ToBeHiddenAsync();
    }

    private static async Task CheckAsync(IPage page, string view, ColorScheme scheme, int width)
    {
        await Phone.ShootAsync(page, $"view-{view}-{scheme}-{width}");
        await PageChecks.FitsAsync(page);
        await PageChecks.AccessibleAsync(page);
    }
}
