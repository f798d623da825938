using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public class DemoCallTests(Phone phone)
{
    [Fact]
    public async Task A_person_takes_the_demo_call_to_the_verdict_and_the_report_by_keyboard_alone()
    {
        var page = await phone.NewPageAsync();
        await page.GotoAsync("/");
        await TabToAsync(page, page.GetByRole(AriaRole.Button, new() { Name = "Open the demo visit" }));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();

        await Talk.UntilVerdictAsync(page, answer => Talk.AnsweredAsync(page, () => AnswerByKeyboardAsync(page, answer)));

        await Assertions.Expect(page.Locator("#log .caution").Last).ToBeVisibleAsync();
        await Phone.ShootAsync(page, "verdict");
        await TabToAsync(page, page.Locator("#verdict summary"));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#verdict li").First).ToBeVisibleAsync();
        await Phone.ShootAsync(page, "verdict-reasons");

        await TabToAsync(page, page.Locator("#show-more"));
        await page.Keyboard.PressAsync("Enter");
        await TabToAsync(page, page.Locator("#report-open"));
        await Phone.ShootAsync(page, "more");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.FrameLocator("#report-frame").Locator("body")).ToContainTextAsync("Cheese room (invented)");
        await Phone.ShootAsync(page, "report");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#report")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task The_verdict_is_reached_by_thumb_with_the_pad_and_the_large_buttons()
    {
        var page = await phone.NewPageAsync(ColorScheme.Dark);
        await Talk.OpenDemoAsync(page);

        await Talk.UntilVerdictAsync(page, answer => Talk.AnsweredAsync(page, () => AnswerByThumbAsync(page, answer)));

        await Phone.ShootAsync(page, "verdict-night");
        await page.Locator("#show-readings").TapAsync();
        await Assertions.Expect(page.Locator("#readings-list")).ToContainTextAsync("9.2 °C");
        await Phone.ShootAsync(page, "readings-night");
    }

    [Fact]
    public async Task A_visit_is_found_again_at_its_address_with_all_that_was_said()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        var asked = await page.Locator("#ask").InnerTextAsync();

        await page.ReloadAsync();

        await Assertions.Expect(page.Locator("#ask")).ToHaveTextAsync(asked);
        await Assertions.Expect(page.Locator("#log .heard").Last).ToContainTextAsync("9.2");
    }

    [Fact]
    public async Task Undo_takes_back_the_last_reading_and_asks_again()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "box_temperature_check");

        await Talk.AnsweredAsync(page, () => page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync());

        Assert.Equal("box_temperature", await Talk.AskedAsync(page));
    }

    private static async Task AnswerByKeyboardAsync(IPage page, string answer)
    {
        var choice = Choice(page, answer);
        if (await choice.CountAsync() > 0)
        {
            await TabToAsync(page, choice);
        }
        else
        {
            await TabToAsync(page, page.Locator("#text"));
            await page.Keyboard.TypeAsync(answer);
        }

        await page.Keyboard.PressAsync("Enter");
    }

    private static async Task AnswerByThumbAsync(IPage page, string answer)
    {
        var choice = Choice(page, answer);
        if (await choice.CountAsync() > 0)
        {
            await choice.TapAsync();
            return;
        }

        if (answer == "skip")
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Skip" }).TapAsync();
            return;
        }

        foreach (var key in answer)
        {
            await page.Locator("#pad").GetByRole(AriaRole.Button, new() { Name = key == '.' ? "Point" : $"{key}", Exact = true }).TapAsync();
        }

        await page.Locator("#pad").GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).TapAsync();
    }

    private static ILocator Choice(IPage page, string answer) =>
        page.Locator("#choices").GetByRole(AriaRole.Button, new() { Name = answer, Exact = true });

    private static async Task TabToAsync(IPage page, ILocator target)
    {
        for (var step = 0; step < 80; step++)
        {
            if (await target.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"The Tab key does not lead to {target}.");
    }
}
