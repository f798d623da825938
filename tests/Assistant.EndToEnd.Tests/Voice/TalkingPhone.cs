using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.Voice.Scoring.Kit;
using Assistant.Voice.Sound;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>A phone whose microphone is a WAV file: it plays from its start whenever the page opens the microphone, and is silent after.</summary>
public sealed class TalkingPhone : IAsyncLifetime
{
    private static readonly SyntheticVoice Technician = new("flite", "awb");

    private readonly string microphone = Path.Combine(Directory.CreateTempSubdirectory("coldwalk-microphone-").FullName, "microphone.wav");
    private IPlaywright? playwright;
    private IBrowser? browser;

    public AppServer Server { get; } = new();

    public async Task InitializeAsync()
    {
        await Server.InitializeAsync();
        Assertions.SetDefaultExpectTimeout(20_000);
        Silent();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", $"--use-file-for-fake-audio-capture={microphone}%noloop",
            ],
        });
    }

    /// <summary>A fresh page of this phone on a visit of its own, at the first reading.</summary>
    public async Task<IPage> AtFirstReadingAsync()
    {
        var context = await browser!.NewContextAsync(new() { BaseURL = Server.Address.ToString(), ViewportSize = new() { Width = Phone.Width, Height = Phone.Height }, HasTouch = true });
        context.SetDefaultTimeout(20_000);
        return await AtFirstReadingAsync(await context.NewPageAsync());
    }

    internal static async Task<IPage> AtFirstReadingAsync(IPage page)
    {
        await Page.Talk.OpenDemoAsync(page);
        await Page.Talk.UntilAskedAsync(page, "box_temperature");
        return page;
    }

    /// <summary>What the microphone will give: the words near a fan, after a second.</summary>
    public void WillSay(string words) => WavFile.Write(microphone, FanNoise.Behind(Technician.Say(words), decibels: 20, seed: 11, lead: 1));

    public void Silent() => WavFile.Write(microphone, FanNoise.Alone(seconds: 1, loudness: 30, seed: 12));

    public async Task DisposeAsync()
    {
        await (browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        playwright?.Dispose();
        await Server.DisposeAsync();
        Directory.Delete(Path.GetDirectoryName(microphone)!, recursive: true);
    }
}
