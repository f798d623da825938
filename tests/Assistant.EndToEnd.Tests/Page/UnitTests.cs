using System.Text.RegularExpressions;
using Assistant.EndToEnd.Tests.Fixtures;
using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

[Collection(PhoneGroup.Name)]
public partial class UnitTests(Phone phone)
{
    [Fact]
    public async Task A_visit_starts_from_the_label_on_the_unit_and_the_next_scan_carries_it_on()
    {
        var page = await phone.NewPageAsync(person: "Kim");
        var (asset, site) = await NewUnitAsync();
        await page.GotoAsync($"/units/{asset}/label");
        await Phone.ShootAsync(page, "label");
        await PageChecks.AccessibleDayAndNightAsync(page);
        Assert.Equal(1, await page.Locator("main svg").CountAsync());
        await Assertions.Expect(page.Locator(".hint").First).ToContainTextAsync("no phone will open this code");
        var address = AddressPattern().Match(await page.Locator("main").InnerTextAsync()).Value;

        await page.GotoAsync(address);
        await Assertions.Expect(page.Locator("#unit-site")).ToHaveTextAsync(site);
        await Phone.ShootAsync(page, "unit");
        await PageChecks.AccessibleDayAndNightAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Start another visit" }).ClickAsync();
        await Assertions.Expect(page.Locator("#ask")).Not.ToBeEmptyAsync();
        await Assertions.Expect(page.Locator("#site")).ToHaveTextAsync(site);
        var visit = page.Url;

        await page.GotoAsync(address);
        await page.GetByRole(AriaRole.Button, new() { Name = "Carry on the visit" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(visit);
    }

    [Fact]
    public async Task Units_and_visits_are_found_by_a_word_of_the_site()
    {
        var (_, site) = await NewUnitAsync();
        var page = await phone.NewPageAsync();
        await page.GotoAsync("/");

        await page.Locator("#find").FillAsync($"cellar {site.Split(' ')[^1]}");

        var found = page.Locator("#find-list button");
        await Assertions.Expect(found).ToHaveCountAsync(2);
        await Phone.ShootAsync(page, "found");
        await PageChecks.AccessibleDayAndNightAsync(page);
        await found.First.ClickAsync();
        await Assertions.Expect(page.Locator("#unit-site")).ToHaveTextAsync(site);
    }

    [Fact]
    public async Task The_visit_is_given_to_another_phone_by_link_and_code()
    {
        var page = await phone.NewPageAsync();
        await Talk.OpenDemoAsync(page);
        await page.Locator("#show-more").ClickAsync();
        await page.Locator("#share-open").ClickAsync();
        await Assertions.Expect(page.Locator("#share-code")).ToHaveJSPropertyAsync("complete", true);
        await Phone.ShootAsync(page, "share");
        var other = await phone.NewPageAsync();

        await other.GotoAsync(await page.Locator("#share-link").InputValueAsync());

        await Assertions.Expect(other.Locator("#ask")).ToHaveTextAsync(await page.Locator("#ask").InnerTextAsync());
    }

    private async Task<(string Asset, string Site)> NewUnitAsync()
    {
        var id = Guid.NewGuid().ToString();
        var site = $"Cellar (invented) {id[..8]}";
        var view = await phone.Server.PostAsync("/api/visits", new { id, site, refrigerant = "R449A", units = "metric" });
        return ((string)view["assetId"]!, site);
    }

    [GeneratedRegex(@"http://\S+")]
    private static partial Regex AddressPattern();
}
