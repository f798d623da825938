using System.Net.Http.Json;
using Assistant.EndToEnd.Tests.Fixtures;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>The report as an office opens it: at the width of A4 and Letter (at 96 points an inch) and on a phone, with what people may type into it.</summary>
[Collection(PhoneGroup.Name)]
public class ReportLayoutTests(Phone phone)
{
    private static readonly string[] Call =
    [
        "ok", "9 C", "9.2 C", "set at 4 C, differential 2 K", "calling, door is good", "all fans", "<script>document.title = 'taken'</script>",
        "safe \u202Egnitar\u2066 end", new string('W', 1_900), "vacuum 64 Pa", "vacuum 69 Pa after 5 minutes", "vacuum 72 Pa after 20 minutes", "leak at the distributor nut, 4 o'clock",
    ];

    [Theory]
    [InlineData(794, "a4")]
    [InlineData(816, "letter")]
    [InlineData(360, "phone")]
    public async Task A_report_fits_its_width_runs_nothing_and_passes_axe(int width, string name)
    {
        var visit = await CalledAsync();
        var page = await phone.NewPageAsync();
        await page.SetViewportSizeAsync(width, 1_100);

        await page.GotoAsync($"/visits/{visit}/report.html");

        Assert.Equal("Visit report", (await page.TitleAsync()).Split(" - ")[0]);
        await Phone.ShootAsync(page, $"report-{name}");
        Assert.Empty(await page.EvaluateAsync<string[]>(
            """
            document.documentElement.scrollWidth <= document.documentElement.clientWidth ? [] : [...document.querySelectorAll("body *")]
              .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
              .map(e => `${e.outerHTML.slice(0, 80)} ends at ${e.getBoundingClientRect().right}`)
            """));
        var axe = await page.RunAxe(new AxeRunOptions());
        Assert.Empty(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {string.Join("; ", v.Nodes.Select(n => n.Html))}"));
    }

    [Fact]
    public async Task The_plots_are_there_for_the_page_with_their_words()
    {
        var visit = await CalledAsync();

        var plots = await phone.Server.Client.GetFromJsonAsync<PlotOnWire[]>($"/api/visits/{visit}/plots");
        using var picture = await phone.Server.Client.GetAsync($"/visits/{visit}/plots/vacuum.svg");
        using var none = await phone.Server.Client.GetAsync($"/visits/{visit}/plots/cycle.svg");

        var vacuum = Assert.Single(plots!);
        Assert.Contains("20 min 72 Pa", vacuum.Alt, StringComparison.Ordinal);
        Assert.Equal("image/svg+xml", picture.Content.Headers.ContentType!.MediaType);
        Assert.Equal(vacuum.Svg, await picture.Content.ReadAsStringAsync());
        Assert.Equal(System.Net.HttpStatusCode.NotFound, none.StatusCode);
    }

    private async Task<string> CalledAsync()
    {
        var id = Guid.NewGuid().ToString();
        using var opened = await phone.Server.Client.PostAsJsonAsync("/api/visits", new { id, site = "Invented Dairy \"<b>", units = "metric" });
        opened.EnsureSuccessStatusCode();
        foreach (var text in Call)
        {
            using var said = await phone.Server.Client.PostAsJsonAsync($"/api/visits/{id}/messages", new { id = Guid.NewGuid().ToString(), text });
            Assert.True(said.IsSuccessStatusCode || text.Contains('\u202E', StringComparison.Ordinal), text);
        }

        return id;
    }

    private sealed record PlotOnWire(string Name, string Title, string Alt, string Svg);
}
