using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Page;

public class ApiTests(AppServer server) : IClassFixture<AppServer>
{
    private static string NewId() => Guid.NewGuid().ToString();

    [Fact]
    public async Task Every_answer_carries_the_headers_that_fence_the_page_in()
    {
        using var response = await server.Client.GetAsync("/");

        var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none'; script-src 'self';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(response.Headers.GetValues("Referrer-Policy")));
    }

    [Fact]
    public async Task A_visit_on_two_phones_is_offered_once_and_its_equipment_without_a_name_is_not_called_unit()
    {
        var (visit, site) = (NewId(), "Invented Dairy " + NewId());
        var opened = await server.PostAsync("api/visits", new { id = visit, site, refrigerant = "R449A", by = "Kim" });
        var code = (string?)(await server.Client.GetFromJsonAsync<JsonNode>($"api/visits/{visit}/share"))!["code"];
        await server.PostAsync("api/join", new { id = NewId(), code, by = "Lee" });

        var start = await server.Client.GetFromJsonAsync<JsonNode>("api/start");
        Assert.Single(start!["visits"]!.AsArray(), v => (string?)v!["site"] == site);
        var found = await server.Client.GetFromJsonAsync<JsonNode>($"api/search?q={Uri.EscapeDataString(site)}");
        Assert.Single(found!["visits"]!.AsArray());
        Assert.DoesNotContain(", unit", opened.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_crew_of_phones_that_hold_their_lines_open_shuts_nobody_out()
    {
        var lines = new List<TcpClient>();
        try
        {
            for (var i = 0; i < 300; i++)
            {
                var line = new TcpClient();
                await line.ConnectAsync(server.Address.Host, server.Address.Port);
                lines.Add(line);
            }

            using var late = new HttpClient { BaseAddress = server.Address };
            using var response = await late.GetAsync("/js/main.js");

            Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        }
        finally
        {
            lines.ForEach(line => line.Dispose());
        }
    }

    [Fact]
    public async Task A_foreign_name_pointed_at_this_machine_is_refused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = "elsewhere.example";

        using var response = await server.Client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
    }

    [Theory]
    [InlineData("""{"id":"short","site":"Dairy"}""", "id: 8 to 64 letters, digits and dashes, made by the page.")]
    [InlineData("""{"id":"visit-0001","site":" "}""", "site: it is empty; one line of text is wanted.")]
    [InlineData("""{"id":"visit-0001","site":"Dairy","units":"imperial"}""", "units: us or metric.")]
    [InlineData("""{"id":"visit-0001","site":"Dairy","refrigerant":"R999"}""", "refrigerant: R999 is in no table here; take one from the list, or leave it empty.")]
    [InlineData("""{"id":"visit-0001","assetId":"nowhere"}""", "There is no asset nowhere on record. Name one that is, or leave it out.")]
    public async Task A_visit_that_can_not_be_opened_says_in_one_line_what_would_be_right(string body, string line)
    {
        using var response = await PostAsync("/api/visits", body);

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal(line, await ErrorAsync(response));
    }

    [Fact]
    public async Task Broken_json_is_one_line_and_no_failure()
    {
        using var response = await PostAsync("/api/visits", "{");

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.NotEqual("", await ErrorAsync(response));
    }

    [Fact]
    public async Task A_message_that_is_too_large_is_refused()
    {
        using var response = await PostAsync($"/api/visits/{NewId()}/messages", $$"""{"id":"{{NewId()}}","text":"{{new string('9', 40_000)}}"}""");

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, response.StatusCode);
    }

    [Fact]
    public async Task An_address_without_a_visit_says_so()
    {
        using var response = await server.Client.GetAsync($"/api/visits/{NewId()}");

        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("There is no visit under this address. Go back to the start and open one.", await ErrorAsync(response));
    }

    [Fact]
    public async Task Opening_the_same_visit_twice_opens_one_and_the_new_unit_is_on_the_first_screen()
    {
        var id = NewId();
        var body = $$"""{"id":"{{id}}","site":"Upper Dairy {{id}}","refrigerant":"404a","units":"us"}""";
        using var first = await PostAsync("/api/visits", body);
        using var second = await PostAsync("/api/visits", body);

        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
        var start = await server.Client.GetFromJsonAsync<JsonNode>("/api/start");
        Assert.Single(start!["visits"]!.AsArray(), v => (string?)v!["id"] == id);
        Assert.Single(start["assets"]!.AsArray(), a => (string?)a!["site"] == $"Upper Dairy {id}");
        var view = await server.Client.GetFromJsonAsync<JsonNode>($"/api/visits/{id}");
        Assert.Contains(view!["readings"]!.AsArray(), r => (string?)r!["fact"] == "refrigerant" && (string?)r["value"] == "R404A");
    }

    [Fact]
    public async Task The_report_comes_as_pdf_too()
    {
        var id = NewId();
        using var opened = await PostAsync("/api/visits", $$"""{"id":"{{id}}","demo":true}""");

        var pdf = await server.Client.GetByteArrayAsync($"/visits/{id}/report.pdf");

        Assert.Equal("%PDF-"u8.ToArray(), pdf[..5]);
    }

    private static async Task<string?> ErrorAsync(HttpResponseMessage response) =>
        (string?)(await response.Content.ReadFromJsonAsync<JsonNode>())!["error"];

    private Task<HttpResponseMessage> PostAsync(string path, string json) =>
        server.Client.PostAsync(path, new StringContent(json, System.Text.Encoding.UTF8, "application/json"));
}
