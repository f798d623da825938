using System.Net;
using Assistant.EndToEnd.Tests.Texts;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>One who asks too much is told when to come again, and the others are not held up.</summary>
public sealed class RateLimitTests
{
    private const int TurnsOfAPerson = 120;

    [Fact]
    public async Task A_person_who_says_too_much_in_a_minute_is_refused_and_nothing_of_it_is_stored()
    {
        await using var firm = await FirmServer.StartAsync();
        var key = await firm.KeyAsync();
        await firm.OfficeAsync("add", "Lee", "--firm", "Invented Cooling");
        var other = (await firm.OfficeAsync("key", "Lee")).Output.Trim();
        var visit = Guid.NewGuid().ToString();
        using var opened = await firm.PostAsync("/api/visits", new { id = visit, site = "Invented Dairy" }, key);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);

        var statuses = new List<HttpStatusCode>();
        string? line = null, wait = null;
        for (var i = 0; i < TurnsOfAPerson * 3 && line is null; i++)
        {
            using var said = await firm.PostAsync($"/api/visits/{visit}/messages", new { id = $"{i:00000000}", text = "status" }, key);
            statuses.Add(said.StatusCode);
            if (said.StatusCode == HttpStatusCode.TooManyRequests)
            {
                (line, wait) = ((string?)(await FirmServer.JsonAsync(said))["error"], said.Headers.RetryAfter?.ToString());
            }
        }

        Assert.StartsWith("Too much at once: nothing of this was stored.", line, StringComparison.Ordinal);
        Assert.NotNull(wait);
        Assert.True(statuses.Count > TurnsOfAPerson - 5, $"{statuses.Count} were taken");
        using var others = await firm.PostAsync("/api/visits", new { id = Guid.NewGuid().ToString(), site = "Invented Bakery" }, other);
        Assert.Equal(HttpStatusCode.OK, others.StatusCode);
    }

    [Fact]
    public async Task The_door_takes_ten_codes_a_minute_from_one_address()
    {
        await using var firm = await FirmServer.StartAsync();

        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 12; i++)
        {
            using var tried = await firm.SendAsync(HttpMethod.Post, "/enter", new FormUrlEncodedContent([new("code", $"wrong{i}"), new("to", "/")]));
            statuses.Add(tried.StatusCode);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
    }

    [Fact]
    public async Task A_number_that_texts_too_much_is_brought_again_later()
    {
        using var served = new ServerWithoutGateway();
        await served.InitializeAsync();
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 200 && !statuses.Contains(HttpStatusCode.TooManyRequests); i++)
        {
            statuses.Add(await BringAsync(served, "%2B15550101", i));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        Assert.Equal(HttpStatusCode.OK, await BringAsync(served, "%2B15550102", 0));
    }

    private static async Task<HttpStatusCode> BringAsync(ServerWithoutGateway served, string from, int id)
    {
        using var answer = await served.Client.GetAsync(new Uri($"text/inbound?key={ServerWithoutGateway.Secret}&from={from}&text=box+47&time=1784000000&id={from}{id}", UriKind.Relative));
        return answer.StatusCode;
    }
}
