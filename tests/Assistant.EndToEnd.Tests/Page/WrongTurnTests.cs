using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>What goes wrong on the page is said in a line of its own, and the way on is there.</summary>
[Collection(PhoneGroup.Name)]
public class WrongTurnTests(Phone phone)
{
    [Theory]
    [InlineData("/?visit=nowhere", "There is no visit under this address. Open one here.")]
    [InlineData("/?visit=00000000-0000-0000-0000-000000000000", "There is no visit under this address. Open one here.")]
    [InlineData("/?unit=nowhere", "There is no such unit on record. Search for it by its site, or begin a new visit.")]
    public async Task An_address_that_names_nothing_leads_to_the_first_screen(string address, string line)
    {
        var page = await phone.NewPageAsync();
        await page.GotoAsync(address);

        await Assertions.Expect(page.Locator("#trouble")).ToHaveTextAsync(line);
        await Assertions.Expect(page.Locator("#start")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#visit")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator("#unit")).ToBeHiddenAsync();
        await PageChecks.FitsAsync(page);
    }

    [Fact]
    public async Task What_was_refused_is_not_said_beside_the_next_try_and_a_visit_begun_leaves_empty_fields()
    {
        using var server = new AppServer();
        await server.InitializeAsync();
        var page = await phone.NewPageAsync(server: server);
        await page.GotoAsync("/");
        await page.Locator("#new-site").FillAsync("Quarry Lane dairy");
        await page.Locator("#new-refrigerant").FillAsync("R999");
        await page.Locator("#new-visit button[type=submit]").ClickAsync();
        await Assertions.Expect(page.Locator("#trouble")).ToContainTextAsync("R999 is in no table here");
        await page.Locator("#new-refrigerant").FillAsync("R449A");
        await Assertions.Expect(page.Locator("#trouble")).ToBeHiddenAsync();
        await page.Locator("#new-visit button[type=submit]").ClickAsync();
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();

        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#leave").ClickAsync();
        await Assertions.Expect(page.Locator("#new-site")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator("#new-refrigerant")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator("#known-list")).ToContainTextAsync("Quarry Lane dairy");
        await page.Locator("#find").FillAsync("no such place");
        await Assertions.Expect(page.Locator("#find-list")).ToContainTextAsync("Nothing found");
        await Assertions.Expect(page.Locator("#known-list")).ToBeHiddenAsync();
        await page.Locator("#find").FillAsync("");
        await Assertions.Expect(page.Locator("#known-list")).ToBeVisibleAsync();
        await page.Context.CloseAsync();
        await server.KillAsync();
    }

    [Fact]
    public async Task Without_a_signal_the_report_and_the_code_to_say_are_said_to_need_one()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await Talk.InstalledAsync(page);
        await page.Context.SetOfflineAsync(true);

        await OpenAsync(page, "report-open");
        await Assertions.Expect(page.Locator("#report-missing")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#report-frame")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator("#report-pdf")).ToBeHiddenAsync();
        await page.Locator("#report [data-close]").ClickAsync();
        await OpenAsync(page, "share-open");
        await Assertions.Expect(page.Locator("#share-spoken")).ToHaveTextAsync("not without a signal");
        await page.Locator("#share [data-close]").ClickAsync();

        await page.Context.SetOfflineAsync(false);
        await OpenAsync(page, "report-open");
        await Assertions.Expect(page.FrameLocator("#report-frame").Locator("h1").First).ToHaveTextAsync("Visit report");
        await Assertions.Expect(page.Locator("#report-missing")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_pressure_beyond_the_table_is_answered_with_how_far_the_table_goes()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await OpenAsync(page, "quick-open");
        await page.Locator("#quick-value").FillAsync("2400");
        await Assertions.Expect(page.Locator("#quick-answer p").First).ToHaveTextAsync(new System.Text.RegularExpressions.Regex(@"^dew: the table for R449A goes from -?\d[\d.]* bar to \d[\d.]* bar$"));

        // 24 bar is the demo's head: dew 57.0 °C by its own report, bubble 52.9.
        await page.Locator("#quick-value").FillAsync("24");
        await Assertions.Expect(page.Locator("#quick-answer p").Nth(0)).ToHaveTextAsync("dew: 57.0 °C");
        await Assertions.Expect(page.Locator("#quick-answer p").Nth(1)).ToHaveTextAsync("bubble: 52.9 °C");
    }

    private static async Task OpenAsync(IPage page, string button)
    {
        await page.Locator("#show-more").ClickAsync();
        await page.Locator($"#{button}").ClickAsync();
    }
}
