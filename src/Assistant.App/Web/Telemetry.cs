using Assistant.App.Hosting;
using Assistant.Records.Conversations;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace Assistant.App.Web;

/// <summary>
/// Metrics and traces by OpenTelemetry, sent where OTEL_EXPORTER_OTLP_ENDPOINT says and nowhere without it; the exporter reads the rest of
/// its own settings (OTEL_EXPORTER_OTLP_PROTOCOL, OTEL_METRIC_EXPORT_INTERVAL and so on) from the environment as well. Traces are this
/// program's own alone: those of the web server would carry addresses with words of people in them.
/// </summary>
internal static class Telemetry
{
    public static void AddTelemetry(this IServiceCollection services)
    {
        if (string.IsNullOrWhiteSpace(Environment.GetEnvironmentVariable("OTEL_EXPORTER_OTLP_ENDPOINT")))
        {
            return;
        }

        services.AddHostedService<RecordsGauges>();
        services.AddOpenTelemetry()
            .WithMetrics(metrics => metrics
                .AddMeter(TurnTelemetry.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "Microsoft.AspNetCore.RateLimiting", "System.Runtime")
                .AddOtlpExporter())
            // The web server's own span above it is not collected, and would leave out what hangs on it.
            .WithTracing(traces => traces.SetSampler<AlwaysOnSampler>().AddSource(TurnTelemetry.Name).AddOtlpExporter());
    }
}
