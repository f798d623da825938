using System.Diagnostics;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>What a person does on the page.</summary>
internal static class Talk
{
    public static async Task OpenDemoAsync(IPage page)
    {
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the demo visit" }).ClickAsync();
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
    }

    /// <summary>Waits until the phone holds the page itself and the tables.</summary>
    public static async Task InstalledAsync(IPage page)
    {
        // Asked again and again: waiting for a function takes its promise for a yes.
        var started = Stopwatch.StartNew();
        while (!await page.EvaluateAsync<bool>(
            "async () => Boolean(navigator.serviceWorker.controller) && Boolean(await (await caches.open('coldwalk-tables')).match('/tables.json'))"
            + " && Boolean(await (await import('/js/kept.js')).recall('facts:metric'))"))
        {
            Assert.True(started.Elapsed < TimeSpan.FromSeconds(20), "the page was not installed within 20 s");
            await Task.Delay(100);
        }
    }

    /// <summary>A measured figure, beside the screenshots.</summary>
    public static void Note(string what, TimeSpan? took = null) =>
        File.AppendAllText(Path.Combine(Repository.Screenshots, "measured.txt"), took is null ? $"{what}\n" : $"{what}: {took.Value.TotalSeconds:0.00} s\n");

    /// <summary>Does something and waits for the answer.</summary>
    public static async Task AnsweredAsync(IPage page, Func<Task> act)
    {
        var answers = page.Locator("#log .spoken");
        var before = await answers.CountAsync();
        await act();
        await Assertions.Expect(answers).ToHaveCountAsync(before + 1);
    }

    public static Task SayAsync(IPage page, string text) => AnsweredAsync(page, async () =>
    {
        await page.Locator("#text").FillAsync(text);
        await page.Locator("#text").PressAsync("Enter");
    });

    public static async Task<string> AskedAsync(IPage page) => await page.Locator("#ask").GetAttributeAsync("data-asked") ?? "";

    /// <summary>Answers question after question until the fact is asked for.</summary>
    public static async Task UntilAskedAsync(IPage page, string fact)
    {
        for (var turn = 0; turn < 30 && await AskedAsync(page) != fact; turn++)
        {
            await SayAsync(page, Answers.To(await AskedAsync(page)));
        }

        Assert.Equal(fact, await AskedAsync(page));
    }

    /// <summary>Answers question after question until the walk says what to do about the dirty condenser.</summary>
    public static async Task UntilVerdictAsync(IPage page, Func<string, Task> answer)
    {
        var later = page.Locator("#choices").GetByRole(AriaRole.Button, new() { Name = "later", Exact = true });
        for (var turn = 0; turn < 40 && await later.CountAsync() == 0; turn++)
        {
            await answer(Answers.To(await AskedAsync(page)));
        }

        await Assertions.Expect(later).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#verdict .name")).ToHaveTextAsync("the condenser can not get rid of its heat");
    }
}
