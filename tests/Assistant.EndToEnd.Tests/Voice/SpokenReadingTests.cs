using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>The call by voice on the page, in a browser whose microphone is a WAV file.</summary>
public sealed class SpokenReadingTests(TalkingPhone phone, ITestOutputHelper output) : IClassFixture<TalkingPhone>
{
    [Fact]
    public async Task Hands_free_a_reading_is_read_back_confirmed_and_stands_in_the_visit()
    {
        var page = await phone.AtFirstReadingAsync();
        await PageWaits.NoteAsync(page);
        await SpokenPage.OpenAsync(page, phone);
        await PageChecks.FitsAsync(page);
        await Phone.ShootAsync(page, "voice-ready");

        await SayHandsFreeAsync(page, "nine point five degrees", async () =>
        {
            await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Speaking");
            await Phone.ShootAsync(page, "voice-speaking");
        });
        await Assertions.Expect(page.Locator("#voice-said")).ToHaveTextAsync("9 point 5 degrees Celsius. Correct, or wrong?");
        Assert.DoesNotContain("box_temperature", await SpokenPage.ReadingsAsync(page), StringComparison.Ordinal);

        await SayHandsFreeAsync(page, "thats right");
        await Assertions.Expect(page.Locator("#voice-said")).ToContainTextAsync("9.5");
        var waits = await PageWaits.SoFarAsync(page);
        output.WriteLine($"From the last word until its end was sent, the answer had come, and it sounded, in s: {string.Join("; ", waits.Select(w => string.Join(", ", w.Select(s => $"{s:0.00}"))))}");
        Assert.Equal(2, waits.Length);
        await page.Locator("#voice-leave").ClickAsync();
        await Assertions.Expect(page.Locator("#log .heard").Last).ToContainTextAsync("9.5 °C");
        Assert.Contains("9.5", await SpokenPage.ReadingsAsync(page), StringComparison.Ordinal);
        Assert.Equal("box_temperature_check", await Talk.AskedAsync(page));
    }

    [Fact]
    public async Task With_the_button_held_a_reading_is_read_back_and_nothing_is_stored_on_a_no()
    {
        var page = await phone.AtFirstReadingAsync();
        await SpokenPage.OpenAsync(page, phone);

        await SayHoldingAsync(page, "twelve degrees");
        await Assertions.Expect(page.Locator("#voice-said")).ToHaveTextAsync("1 2 degrees Celsius. Correct, or wrong?");
        await Assertions.Expect(page.Locator("#voice-heard")).ToHaveTextAsync("“twelve degrees”");
        await SpokenPage.ReadyAsync(page);
        await SayHoldingAsync(page, "thats wrong");
        await Assertions.Expect(page.Locator("#voice-said")).ToContainTextAsync("Once more");

        await page.Locator("#voice-leave").ClickAsync();
        Assert.Equal("box_temperature", await Talk.AskedAsync(page));
        Assert.DoesNotContain("box_temperature", await SpokenPage.ReadingsAsync(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_screen_reader_needs_is_there_by_day_and_by_night()
    {
        var page = await phone.AtFirstReadingAsync();
        await SpokenPage.OpenAsync(page, phone);

        await PageChecks.AccessibleDayAndNightAsync(page);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#voice")).ToBeHiddenAsync();
        await Talk.SayAsync(page, "9");
    }

    /// <summary>Says something hands free, and waits until what is said to it is another thing than before.</summary>
    private async Task SayHandsFreeAsync(IPage page, string words, Func<Task>? meanwhile = null)
    {
        var before = await page.Locator("#voice-said").TextContentAsync();
        await SpokenPage.SayAsync(page, phone, words, async () =>
        {
            await (meanwhile?.Invoke() ?? Task.CompletedTask);
            await Assertions.Expect(page.Locator("#voice-said")).Not.ToHaveTextAsync(before!, new() { Timeout = 40_000 });
        });
    }

    private async Task SayHoldingAsync(IPage page, string words)
    {
        phone.WillSay(words);
        await SpokenPage.CloseMicrophoneAsync(page);
        await page.Locator("#voice-hold").HoverAsync();
        await page.Mouse.DownAsync();
        await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Listening");
        await Task.Delay(TimeSpan.FromSeconds(3.5));
        await page.Mouse.UpAsync();
    }
}
