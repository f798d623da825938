using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Program;

/// <summary>Signed addresses of reports, made by the command and by the page, opened on the running server.</summary>
public class ReportLinkTests(AppServer server) : IClassFixture<AppServer>
{
    [Fact]
    public async Task A_link_from_the_page_shows_the_report_and_a_changed_one_nothing()
    {
        var id = await OpenAsync();
        using var minted = await server.Client.PostAsync($"/api/visits/{id}/report-link?days=3", null);
        var path = (await minted.Content.ReadFromJsonAsync<JsonObject>())!["path"]!.GetValue<string>();

        using var shown = await server.Client.GetAsync(path);
        Assert.Contains("Visit report", await shown.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("no-store", shown.Headers.CacheControl!.ToString());
        Assert.Equal("noindex", Assert.Single(shown.Headers.GetValues("X-Robots-Tag")));
        Assert.Contains("default-src 'none'", Assert.Single(shown.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        using var pdf = await server.Client.GetAsync(path + "/report.pdf");
        Assert.StartsWith("%PDF", await pdf.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        using var changed = await server.Client.GetAsync(path.Replace("/r/", "/r/x", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.NotFound, changed.StatusCode);
        Assert.Equal("This address opens no report. Check that it was copied whole.", await changed.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_link_from_the_command_is_opened_by_the_server_on_the_same_records()
    {
        await OpenAsync();
        var run = await AppRun.OfAsync(["report", "last", "--link", "--days", "1", "--address", server.Address.ToString(), "--data", server.Data]);

        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"reads the report until \d{4}-\d\d-\d\d \d\d:\d\d UTC\.", run.Error);
        Assert.Contains("Visit report", await server.Client.GetStringAsync(run.Output.Trim()), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(server.Data, "signed-heads.jsonl")));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("91")]
    public async Task A_link_that_never_holds_or_holds_for_ever_is_refused_in_one_line(string days)
    {
        await OpenAsync();
        var run = await AppRun.OfAsync(["report", "last", "--link", "--days", days, "--data", server.Data]);

        Assert.Equal((2, $"A link holds for 1 to 90 days, not {days}.\n"), (run.ExitCode, run.Error));
    }

    [Fact]
    public async Task An_address_that_is_none_is_refused_in_one_line()
    {
        await OpenAsync();
        var run = await AppRun.OfAsync(["report", "last", "--link", "--address", "coldwalk", "--data", server.Data]);

        Assert.Equal((2, "", "--address coldwalk: where \"serve\" is reached is wanted, such as https://coldwalk.example.\n"), (run.ExitCode, run.Output, run.Error));
    }

    private async Task<string> OpenAsync()
    {
        var id = Guid.NewGuid().ToString();
        using var opened = await server.Client.PostAsJsonAsync("/api/visits", new { id, demo = true });
        opened.EnsureSuccessStatusCode();
        return id;
    }
}
