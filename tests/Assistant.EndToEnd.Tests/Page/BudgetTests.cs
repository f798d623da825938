using System.Diagnostics;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>On a bad line the first question comes soon, because little is asked of the line.</summary>
[Collection(PhoneGroup.Name)]
public class BudgetTests(Phone phone)
{
    private const int MostBytes = 60_000;

    [Fact]
    public async Task The_first_view_of_a_visit_weighs_at_most_60_KB_on_the_wire()
    {
        var id = await NewVisitAsync();
        // The worker comes after the first question.
        var page = await phone.NewPageAsync(installs: false);
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Network.enable");
        var bytes = 0d;
        var requests = 0;
        session.Event("Network.loadingFinished").OnEvent += (_, e) =>
        {
            bytes += e!.Value.GetProperty("encodedDataLength").GetDouble();
            requests++;
        };

        await page.GotoAsync($"/?visit={id}");
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#line")).ToBeHiddenAsync();

        Talk.Note($"first view: {bytes / 1000:0.0} kB in {requests} requests");
        Assert.InRange(requests, 10, 24);
        Assert.InRange(bytes, 10_000, MostBytes);
    }

    [Fact]
    public async Task On_250_kbit_a_second_with_400_ms_the_question_and_the_pad_are_there_within_5_seconds()
    {
        var id = await NewVisitAsync();
        var page = await phone.NewPageAsync();
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Network.enable");
        await session.SendAsync("Network.emulateNetworkConditions", new()
        {
            ["offline"] = false,
            ["latency"] = 400,
            ["downloadThroughput"] = 250_000 / 8,
            ["uploadThroughput"] = 250_000 / 8,
        });

        var watch = Stopwatch.StartNew();
        await page.GotoAsync($"/?visit={id}", new() { WaitUntil = WaitUntilState.Commit });
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#pad")).ToBeVisibleAsync();
        watch.Stop();

        Talk.Note("first view on 250 kbit/s and 400 ms", watch.Elapsed);
        Assert.InRange(watch.ElapsedMilliseconds, 0, 5000);
    }

    [Fact]
    public async Task A_page_that_came_in_part_says_so_and_loads_itself_again()
    {
        var id = await NewVisitAsync();
        var page = await phone.NewPageAsync(installs: false);
        // A browser fetches it ahead as often as it likes: the line is bad until the page has said so.
        await page.RouteAsync("**/js/pad.js", route => route.AbortAsync());

        await page.GotoAsync($"/?visit={id}", new() { WaitUntil = WaitUntilState.Commit });

        await Assertions.Expect(page.Locator("#trouble")).ToHaveTextAsync("The page did not come whole over this line. It loads itself again.");
        await page.UnrouteAsync("**/js/pad.js");
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#trouble")).ToBeHiddenAsync();
    }

    private async Task<string> NewVisitAsync()
    {
        var id = Guid.NewGuid().ToString();
        await phone.Server.PostAsync("/api/visits", new { id, demo = true });
        await phone.Server.PostAsync($"/api/visits/{id}/messages", new { id = Guid.NewGuid().ToString(), text = "ok" });
        return id;
    }
}
