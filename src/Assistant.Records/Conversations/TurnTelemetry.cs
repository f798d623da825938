using System.Diagnostics;
using System.Diagnostics.Metrics;
using Assistant.Records.Storage;

namespace Assistant.Records.Conversations;

/// <summary>
/// What is measured of a turn: how many, how long from the message to the stored reply, by which channel, and how it ended. Nothing that
/// was said or read, and nobody's name, is in it.
/// </summary>
public static class TurnTelemetry
{
    /// <summary>The name of the meter and of the source of traces.</summary>
    public const string Name = "Coldwalk";

    private static readonly Meter Meter = new(Name);
    private static readonly ActivitySource Traces = new(Name);
    private static readonly Histogram<double> Seconds = Meter.CreateHistogram<double>("coldwalk.turn.duration", "s", "From a message to its reply on the disk.");
    private static readonly Counter<long> Refused = Meter.CreateCounter<long>("coldwalk.turns.failed", "{turn}", "Messages that were not taken, by what was wrong with the records.");

    internal static async Task<T> MeasureAsync<T>(string channel, Func<Task<T>> turn)
    {
        var began = Stopwatch.GetTimestamp();
        using var span = Traces.StartActivity("turn");
        span?.SetTag("channel", channel);
        try
        {
            var reply = await turn();
            Seconds.Record(Stopwatch.GetElapsedTime(began).TotalSeconds, new KeyValuePair<string, object?>("channel", channel));
            return reply;
        }
        catch (RecordsException failure)
        {
            span?.SetStatus(ActivityStatusCode.Error, failure.Fault.ToString());
            Refused.Add(1, new("channel", channel), new("fault", failure.Fault.ToString()));
            throw;
        }
    }
}
