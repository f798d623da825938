using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public class ReadingTests(Phone phone)
{
    [Fact]
    public async Task A_tap_on_a_reading_corrects_it_and_the_old_one_stays_beside_it()
    {
        var page = await phone.NewPageAsync(person: "Kim");
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "setpoint");
        await page.Locator("#show-readings").TapAsync();
        await page.Locator("#readings-list .reading").Filter(new() { HasText = "second thermometer" }).TapAsync();
        await Assertions.Expect(page.Locator("#entry-now")).ToContainTextAsync("Now 9.2 °C");
        await Phone.ShootAsync(page, "correct");

        await Talk.AnsweredAsync(page, async () =>
        {
            foreach (var key in new[] { "8", "Point", "9" })
            {
                await page.Locator("#entry .pad").GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).TapAsync();
            }

            await page.Locator("#entry .pad").GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).TapAsync();
        });

        await page.Locator("#show-readings").TapAsync();
        var reading = page.Locator("#readings-list .reading").Filter(new() { HasText = "second thermometer" });
        await Assertions.Expect(reading).ToContainTextAsync("8.9 °C");
        await Assertions.Expect(reading).ToContainTextAsync("also 9.2 °C, Kim");
        await Assertions.Expect(page.Locator("#ask")).ToHaveAttributeAsync("data-asked", "setpoint");
    }

    [Fact]
    public async Task The_sign_key_turns_a_number_below_zero_and_the_other_unit_is_one_press_away()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilAskedAsync(page, "box_temperature");
        await page.Locator("#units label").Filter(new() { HasText = "°F" }).TapAsync();
        foreach (var key in new[] { "4", "Minus or plus" })
        {
            await page.Locator("#pad").GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).TapAsync();
        }

        await Talk.AnsweredAsync(page, () => page.Locator("#pad").GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).TapAsync());

        await Assertions.Expect(page.Locator("#log .heard").Last).ToContainTextAsync("-4 °F");
    }

    [Fact]
    public async Task What_follows_by_calculation_stands_beside_what_it_rests_on()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.UntilVerdictAsync(page, answer => Talk.SayAsync(page, answer));
        await page.Locator("#show-readings").ClickAsync();

        var rests = page.Locator("#readings-list li").Filter(new() { HasText = "head pressure" }).Filter(new() { HasText = "24 bar" });
        await Assertions.Expect(rests.Locator(".derived").Last).ToContainTextAsync("over the air; the plate says");
        await Phone.ShootAsync(page, "readings");
    }
}
