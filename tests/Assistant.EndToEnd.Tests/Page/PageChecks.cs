using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>What holds for whatever is on the screen.</summary>
internal static class PageChecks
{
    /// <summary>Nothing runs out at the side, and nothing to press is under 48 px.</summary>
    public static async Task FitsAsync(IPage page)
    {
        var wide = await page.EvaluateAsync<string[]>(
            """
            document.documentElement.scrollWidth <= document.documentElement.clientWidth ? [] : [...document.querySelectorAll("body *")]
              .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
              .map(e => `${e.outerHTML.slice(0, 80)} ends at ${e.getBoundingClientRect().right}`)
            """);
        Assert.Empty(wide);
        var small = await page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll("button, a, summary, select, input:not(.unseen)")]
              .filter(e => e.offsetParent !== null)
              .map(e => [e, e.getBoundingClientRect()])
              .filter(([, box]) => box.width < 48 || box.height < 48)
              .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width}x${box.height}`)
            """);
        Assert.Empty(small);
    }

    /// <summary>The same by day and by night.</summary>
    public static async Task AccessibleDayAndNightAsync(IPage page)
    {
        await AccessibleAsync(page);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await AccessibleAsync(page);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }

    /// <summary>axe-core finds nothing serious or critical.</summary>
    public static async Task AccessibleAsync(IPage page)
    {
        var options = new AxeRunOptions
        {
            // 7:1 is more than the usual check asks, and the sun asks for it.
            Rules = new() { ["color-contrast-enhanced"] = new() { Enabled = true } },
        };
        var result = await page.RunAxe(options);
        var serious = result.Violations.Where(v => v.Impact is "serious" or "critical")
            .Select(v => $"{v.Id}: {string.Join("; ", v.Nodes.Select(n => n.Html))}");
        Assert.Empty(serious);
    }
}
