using System.Net;
using System.Net.Http.Json;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>What clients and the operator are told where the records fail.</summary>
public sealed class RecordsTroubleTests
{
    [Fact]
    public async Task Where_the_records_lie_is_on_the_console_and_not_in_the_answer()
    {
        using var server = new AppServer();
        await server.InitializeAsync();
        await server.PostAsync("api/visits", new { id = "records-trouble-1", site = "Invented creamery" });
        foreach (var file in Directory.EnumerateFiles(server.Data, "coldwalk.db*"))
        {
            await File.WriteAllTextAsync(file, string.Concat(Enumerable.Repeat("not a database ", 4000)));
        }

        using var answer = await server.Client.PostAsJsonAsync("api/visits/records-trouble-1/messages", new { id = "records-trouble-1-1", by = "Kim", text = "box 9 C" });
        var body = await answer.Content.ReadAsStringAsync();
        await server.KillAsync();

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.DoesNotContain(server.Data, body, StringComparison.Ordinal);
        Assert.Contains("Nothing was stored", body, StringComparison.Ordinal);
        Assert.Contains(server.Data, server.Errors, StringComparison.Ordinal);
    }
}
