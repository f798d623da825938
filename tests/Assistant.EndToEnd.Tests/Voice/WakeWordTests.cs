using Assistant.EndToEnd.Tests.Page;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>Asleep after a long silence: the page's microphone, a WAV file, hears talk, then the wake word, then an answer.</summary>
public sealed class WakeWordTests(TalkingPhone phone) : IClassFixture<TalkingPhone>
{
    [Fact]
    public async Task Asleep_it_stores_nothing_until_it_is_called_and_then_takes_a_reading()
    {
        var page = await phone.AtFirstReadingAsync();
        await SpokenPage.OpenAsync(page, phone);
        await FallAsleepAsync(page);

        await SpokenPage.SayAsync(page, phone, "twelve degrees", async () =>
        {
            await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Hearing you");
            await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Say “coldwalk”");
        });
        await Assertions.Expect(page.Locator("#voice-heard")).Not.ToContainTextAsync("twelve");
        Assert.Equal("box_temperature", await Talk.AskedAsync(page));

        await SpokenPage.SayAsync(page, phone, "coldwalk", async () =>
        {
            await Assertions.Expect(page.Locator("#voice-heard")).ToHaveTextAsync("“coldwalk”");
            await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Speaking");
        });
        await SpokenPage.SayAsync(page, phone, "nine point five degrees", () => Assertions.Expect(page.Locator("#voice-said")).ToHaveTextAsync("9 point 5 degrees Celsius. Correct, or wrong?"));
        Assert.DoesNotContain("box_temperature", await SpokenPage.ReadingsAsync(page), StringComparison.Ordinal);
        await SpokenPage.SayAsync(page, phone, "thats right", () => Assertions.Expect(page.Locator("#voice-heard")).ToHaveTextAsync("“thats right”"));

        Assert.Contains("9.5", await SpokenPage.ReadingsAsync(page), StringComparison.Ordinal);
        Assert.Equal("box_temperature_check", await Talk.AskedAsync(page));
    }

    /// <summary>A minute of silence, which need not be waited for: the program goes by the length of the sound it is given.</summary>
    private static async Task FallAsleepAsync(IPage page)
    {
        var address = new TaskCompletionSource<string>();
        page.Request += (_, request) =>
        {
            if (request.Url.Contains("/piece", StringComparison.Ordinal))
            {
                address.TrySetResult(request.Url);
            }
        };
        await page.Locator("#voice-free").ClickAsync();
        await page.EvaluateAsync(
            """
            async address => {
              for (let i = 0; i < 5; i++) {
                await fetch(address, { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: new Int16Array(15 * 16000) });
              }
            }
            """,
            await address.Task.WaitAsync(TimeSpan.FromSeconds(20)));
        await Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Say “coldwalk”");
        await page.Locator("#voice-free").ClickAsync();
        await SpokenPage.ReadyAsync(page);
    }
}
