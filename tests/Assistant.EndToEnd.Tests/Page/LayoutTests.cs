using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public class LayoutTests(Phone phone)
{
    [Fact]
    public async Task Nothing_scrolls_sideways_at_360_px_and_nothing_to_press_is_under_48_px()
    {
        var page = await phone.NewPageAsync();
        await page.GotoAsync("/");
        await Assertions.Expect(page.Locator("#start")).ToBeVisibleAsync();
        await PageChecks.FitsAsync(page);
        await Talk.OpenDemoAsync(page);
        await PageChecks.FitsAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await PageChecks.FitsAsync(page);
        await page.Locator("#show-more").ClickAsync();
        await PageChecks.FitsAsync(page);
    }

    [Fact]
    public async Task At_twice_the_text_size_nothing_is_cut_off_and_the_question_is_in_view()
    {
        var page = await phone.NewPageAsync();
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Page.setFontSizes", new() { ["fontSizes"] = new Dictionary<string, object> { ["standard"] = 32, ["fixed"] = 26 } });
        await Talk.OpenDemoAsync(page);
        Assert.Equal("32px", await page.EvaluateAsync<string>("getComputedStyle(document.documentElement).fontSize"));
        await PageChecks.FitsAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await Phone.ShootAsync(page, "number-200-percent");
        await PageChecks.FitsAsync(page);
        await Talk.UntilVerdictAsync(page, answer => Talk.SayAsync(page, answer));
        await Phone.ShootAsync(page, "verdict-200-percent");
        await PageChecks.FitsAsync(page);
        await Assertions.Expect(page.Locator("#ask")).ToBeInViewportAsync();
    }

    [Fact]
    public async Task With_the_question_in_view_the_last_answer_is_in_view_from_its_start()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");

        var start = page.Locator("#log .spoken p").Last;
        await Assertions.Expect(start).ToBeInViewportAsync(new() { Ratio = 1 });
        Assert.False(await start.EvaluateAsync<bool>("p => p.getBoundingClientRect().bottom > document.getElementById('dock').getBoundingClientRect().top + 1"));
        await Assertions.Expect(page.Locator("#ask")).ToBeInViewportAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeInViewportAsync();
    }
}
