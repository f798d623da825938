using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>Talking to the page.</summary>
internal static class SpokenPage
{
    /// <summary>Opens voice, and waits until the question has been asked aloud.</summary>
    public static async Task OpenAsync(IPage page, TalkingPhone phone)
    {
        phone.Silent();
        await page.GetByRole(AriaRole.Button, new() { Name = "Speak", Exact = true }).ClickAsync();
        await ReadyAsync(page);
        await Assertions.Expect(page.Locator("#voice-said")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#voice-note")).ToBeHiddenAsync();
    }

    public static Task ReadyAsync(IPage page) => Assertions.Expect(page.Locator("#voice-state")).ToHaveTextAsync("Ready", new() { Timeout = 40_000 });

    /// <summary>Says something hands free. Turned on, the microphone opens anew and plays what is said; it is turned off once it came to something.</summary>
    /// <param name="until">Waits for what it came to.</param>
    public static async Task SayAsync(IPage page, TalkingPhone phone, string words, Func<Task> until)
    {
        phone.WillSay(words);
        await CloseMicrophoneAsync(page);
        await page.Locator("#voice-free").ClickAsync();
        await until();
        phone.Silent();
        await page.Locator("#voice-free").ClickAsync();
        await ReadyAsync(page);
    }

    /// <summary>Hands free turned off closes the microphone: when it is opened next, it plays from the start.</summary>
    public static async Task CloseMicrophoneAsync(IPage page)
    {
        await page.Locator("#voice-free").ClickAsync();
        await page.Locator("#voice-free").ClickAsync();
    }

    public static async Task<string> ReadingsAsync(IPage page) =>
        await page.EvaluateAsync<string>("async () => JSON.stringify((await (await fetch(`/api/visits/${new URLSearchParams(location.search).get('visit')}`)).json()).readings)");
}
