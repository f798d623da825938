using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Page;

/// <summary>An answer given to one question and arriving at another is taken for what it was given to.</summary>
public class LateAnswerTests(AppServer server) : IClassFixture<AppServer>
{
    [Fact]
    public async Task A_bare_number_counts_for_the_fact_it_was_given_to()
    {
        var visit = await NewVisitAsync();
        await SayAsync(visit, "ok");
        await SayAsync(visit, "9 degC");

        // The second thermometer is asked by now; this was said when the display was asked.
        var view = await SayAsync(visit, "8.5 °C", answers: "fact:box_temperature");

        Assert.Equal("8.5 °C", Value(view, "box_temperature"));
        Assert.Null(Value(view, "box_temperature_check"));
    }

    [Fact]
    public async Task A_step_the_visit_has_left_is_not_confirmed_a_second_time()
    {
        var visit = await NewVisitAsync();
        var view = (await server.Client.GetFromJsonAsync<JsonNode>($"/api/visits/{visit}"))!;
        var stop = (string)view["stop"]!;
        await SayAsync(visit, "ok", answers: $"stop:{stop}");

        using var late = await server.Client.PostAsJsonAsync($"/api/visits/{visit}/messages", new { id = Guid.NewGuid().ToString(), text = "skip", answers = $"stop:{stop}" });

        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("has gone on from there", (string?)(await late.Content.ReadFromJsonAsync<JsonNode>())!["error"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_that_waited_on_the_phone_keeps_the_time_it_was_taken()
    {
        var visit = await NewVisitAsync();
        await Task.Delay(1200);
        var view = await SayAsync(visit, "9 degC", ago: 1);

        var at = DateTimeOffset.Parse((string)view["readings"]!.AsArray().First(r => (string?)r!["fact"] == "box_temperature")!["at"]!, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(DateTimeOffset.UtcNow - at, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(10));
    }

    private static string? Value(JsonNode view, string fact) =>
        (string?)view["readings"]!.AsArray().FirstOrDefault(r => (string?)r!["fact"] == fact)?["value"];

    private async Task<string> NewVisitAsync()
    {
        var id = Guid.NewGuid().ToString();
        await server.PostAsync("/api/visits", new { id, demo = true });
        return id;
    }

    private Task<JsonNode> SayAsync(string visit, string text, string? answers = null, double? ago = null) =>
        server.PostAsync($"/api/visits/{visit}/messages", new { id = Guid.NewGuid().ToString(), text, answers, ago });
}
