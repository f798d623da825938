using System.Text;
using Assistant.EndToEnd.Tests.Fixtures;

namespace Assistant.EndToEnd.Tests.Guards;

/// <summary>Metrics and traces go where they are told, and carry nothing that was said.</summary>
public sealed class TelemetryTests
{
    [Fact]
    public async Task A_collector_gets_turns_and_what_waits_and_no_word_of_a_person()
    {
        using var collector = new Listener((_, _) => (200, "application/x-protobuf", []));
        using var server = new AppServer(Directory.CreateTempSubdirectory("coldwalk-otel-").FullName, [])
        {
            Environment = new Dictionary<string, string>
            {
                ["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Address.ToString().TrimEnd('/'),
                ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf",
                ["OTEL_METRIC_EXPORT_INTERVAL"] = "500",
                ["OTEL_BSP_SCHEDULE_DELAY"] = "500",
            },
        };
        await server.InitializeAsync();
        var visit = Guid.NewGuid().ToString();
        await server.PostAsync("/api/visits", new { id = visit, site = "Zanzibar Dairy", by = "Quillfeather" });
        await server.PostAsync($"/api/visits/{visit}/messages", new { id = Guid.NewGuid().ToString(), by = "Quillfeather", text = "box 41.7 F" });

        foreach (var (path, name) in new[] { ("/v1/metrics", "coldwalk.turn.duration"), ("/v1/metrics", "coldwalk.outbox.depth"), ("/v1/metrics", "coldwalk.reminders.late"), ("/v1/traces", "turn") })
        {
            await UntilAsync(() => collector.Received.Any(r => r.Path == path && Holds(r.Body, name)), $"{name} at {path}");
        }

        foreach (var word in new[] { "Zanzibar", "Quillfeather", "41.7", visit })
        {
            Assert.DoesNotContain(collector.Received, r => Holds(r.Body, word));
            Assert.DoesNotContain(word, server.Errors, StringComparison.Ordinal);
        }

        await server.KillAsync();
    }

    private static bool Holds(byte[] body, string text) => body.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;

    private static async Task UntilAsync(Func<bool> holds, string what)
    {
        for (var i = 0; i < 300 && !holds(); i++)
        {
            await Task.Delay(100);
        }

        Assert.True(holds(), what);
    }
}
