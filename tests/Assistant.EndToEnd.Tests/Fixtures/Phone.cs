using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Fixtures;

/// <summary>One browser for the tests of the page; each test takes a fresh phone-sized window.</summary>
public sealed class Phone : IAsyncLifetime
{
    public const int Width = 360;
    public const int Height = 740;

    /// <summary>No test uses more of them at once.</summary>
    private const int MostOpen = 4;

    private readonly Queue<IBrowserContext> open = [];

    private IPlaywright? playwright;
    private IBrowser? browser;

    public AppServer Server { get; } = new();

    public async Task InitializeAsync()
    {
        await Server.InitializeAsync();
        Assertions.SetDefaultExpectTimeout(20_000);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    /// <summary>A fresh phone, with nothing on it yet.</summary>
    /// <param name="person">The name it is used under; null for one that has not been told.</param>
    /// <param name="installs">False for a browser that keeps no page: what it sends can be watched and cut.</param>
    public async Task<IPage> NewPageAsync(ColorScheme scheme = ColorScheme.Light, AppServer? server = null, string? person = null, int width = Width, int height = Height, bool installs = true)
    {
        var context = await browser!.NewContextAsync(new()
        {
            BaseURL = (server ?? Server).Address.ToString(),
            ViewportSize = new() { Width = width, Height = height },
            DeviceScaleFactor = width == Width ? 2 : 1,
            HasTouch = true,
            IgnoreHTTPSErrors = true,
            ColorScheme = scheme,
            ServiceWorkers = installs ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
        });
        context.SetDefaultTimeout(20_000);
        open.Enqueue(context);
        if (open.Count > MostOpen)
        {
            await open.Dequeue().CloseAsync();
        }

        if (person is not null)
        {
            await context.AddInitScriptAsync($"localStorage.setItem('coldwalk.person', '{person}')");
        }

        return await context.NewPageAsync();
    }

    public async Task DisposeAsync()
    {
        await (browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        playwright?.Dispose();
        await Server.DisposeAsync();
    }

    /// <summary>Saved for a person to look at.</summary>
    public static Task ShootAsync(IPage page, string name) =>
        page.ScreenshotAsync(new() { Path = Path.Combine(Repository.Screenshots, name + ".png") });
}

[CollectionDefinition(Name)]
public sealed class PhoneGroup : ICollectionFixture<Phone>
{
    public const string Name = "phone";
}
