using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>The call by voice on the page, in a browser whose microphone is a WAV file.</summary>
public sealed class SpokenReadingTests(TalkingPhone phone) : IClassFixture<TalkingPhone>
{
    [Fact]
    public async Task Hands_free_a_reading_is_read_back_confirmed_and_stands_in_the_visit()
    {
        var page = await phone.AtFirstReadingAsync();
        await OpenVoiceAsync(page);
        await PageChecks.FitsAsync(page);
        await Phone.ShootAsync(page, "voice-ready");

        await SayHandsFreeAsync(page, "nine point five degrees", async () =>
        {
            await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Speaking");
            await Phone.ShootAsync(page, "voice-speaking");
        });
        await Assertions.Expect(page.Locator("#voice-said")).ToHaveTextAsync("9 point 5 degrees Celsius. Correct, or wrong?");
        Assert.DoesNotContain("box_temperature", await ReadingsAsync(page), StringComparison.Ordinal);

        await SayHandsFreeAsync(page, "thats right");
        await Assertions.Expect(page.Locator("#voice-said")).ToContainTextAsync("9.5");
        await page.Locator("#voice-leave").ClickAsync();
        await Assertions.Expect(page.Locator("#log .heard").Last).ToContainTextAsync("9.5 °C");
        Assert.Contains("9.5", await ReadingsAsync(page), StringComparison.Ordinal);
        Assert.Equal("box_temperature_check", await Talk.AskedAsync(page));
    }

    [Fact]
    public async Task With_the_button_held_a_reading_is_read_back_and_nothing_is_stored_on_a_no()
    {
        var page = await phone.AtFirstReadingAsync();
        await OpenVoiceAsync(page);

        await SayHoldingAsync(page, "twelve degrees");
        await Assertions.Expect(page.Locator("#voice-said")).ToHaveTextAsync("1 2 degrees Celsius. Correct, or wrong?");
        await Assertions.Expect(page.Locator("#voice-heard")).ToHaveTextAsync("“twelve degrees”");
        await ReadyAsync(page);
        await SayHoldingAsync(page, "thats wrong");
        await Assertions.Expect(page.Locator("#voice-said")).ToContainTextAsync("Once more");

        await page.Locator("#voice-leave").ClickAsync();
        Assert.Equal("box_temperature", await Talk.AskedAsync(page));
        Assert.DoesNotContain("box_temperature", await ReadingsAsync(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_screen_reader_needs_is_there_by_day_and_by_night()
    {
        var page = await phone.AtFirstReadingAsync();
        await OpenVoiceAsync(page);

        await PageChecks.AccessibleDayAndNightAsync(page);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#voice")).ToBeHiddenAsync();
        await Talk.SayAsync(page, "9");
    }

    /// <summary>Opens voice, and waits until the question has been asked aloud.</summary>
    private async Task OpenVoiceAsync(IPage page)
    {
        phone.Silent();
        await page.GetByRole(AriaRole.Button, new() { Name = "Speak", Exact = true }).ClickAsync();
        await ReadyAsync(page);
        await Assertions.Expect(page.Locator("#voice-said")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#voice-note")).ToBeHiddenAsync();
    }

    private static Task ReadyAsync(IPage page) => Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Ready", new() { Timeout = 40_000 });

    /// <summary>Turned on, the microphone opens anew and plays what is said; turned off once the answer is there.</summary>
    private async Task SayHandsFreeAsync(IPage page, string words, Func<Task>? meanwhile = null)
    {
        phone.WillSay(words);
        var before = await page.Locator("#voice-said").TextContentAsync();
        await CloseMicrophoneAsync(page);
        await page.Locator("#voice-free").ClickAsync();
        await (meanwhile?.Invoke() ?? Task.CompletedTask);
        await Assertions.Expect(page.Locator("#voice-said")).Not.ToHaveTextAsync(before!, new() { Timeout = 40_000 });
        phone.Silent();
        await page.Locator("#voice-free").ClickAsync();
        await ReadyAsync(page);
    }

    private async Task SayHoldingAsync(IPage page, string words)
    {
        phone.WillSay(words);
        await CloseMicrophoneAsync(page);
        await page.Locator("#voice-hold").HoverAsync();
        await page.Mouse.DownAsync();
        await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Listening");
        await Task.Delay(TimeSpan.FromSeconds(3.5));
        await page.Mouse.UpAsync();
    }

    /// <summary>Hands free turned off closes the microphone: when it is opened next, it plays from the start.</summary>
    private static async Task CloseMicrophoneAsync(IPage page)
    {
        await page.Locator("#voice-free").ClickAsync();
        await page.Locator("#voice-free").ClickAsync();
    }

    private static async Task<string> ReadingsAsync(IPage page) =>
        await page.EvaluateAsync<string>("async () => JSON.stringify((await (await fetch(`/api/visits/${new URLSearchParams(location.search).get('visit')}`)).json()).readings)");
}
