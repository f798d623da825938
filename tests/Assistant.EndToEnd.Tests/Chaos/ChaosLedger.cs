using System.Collections.Concurrent;
using System.Diagnostics;

namespace Assistant.EndToEnd.Tests.Chaos;

/// <summary>What was acknowledged to the technicians of a run, and how long they waited.</summary>
internal sealed class ChaosLedger
{
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly ConcurrentQueue<Acknowledged> acknowledged = new();
    private readonly ConcurrentDictionary<string, int> refusals = new(StringComparer.Ordinal);
    private readonly ConcurrentQueue<string> happened = new();

    public TimeSpan Now => clock.Elapsed;

    public IReadOnlyCollection<Acknowledged> All => acknowledged;

    /// <summary>The lines of refusals (5xx), and how often each was given.</summary>
    public IReadOnlyDictionary<string, int> Refusals => refusals;

    /// <summary>Kills and restarts in their order.</summary>
    public IReadOnlyCollection<string> Happened => happened;

    public int Lost { get; private set; }

    public void Take(Acknowledged answer) => acknowledged.Enqueue(answer);

    public void Refuse(string line) => refusals.AddOrUpdate(line, 1, (_, count) => count + 1);

    /// <summary>A call whose line broke: its message was sent again.</summary>
    public void Break()
    {
        lock (happened)
        {
            Lost++;
        }
    }

    public void Note(string what) => happened.Enqueue($"{Now.TotalSeconds,6:0.0} s {what}");

    /// <summary>The longest time in which nobody got any answer.</summary>
    public TimeSpan LongestSilence()
    {
        var times = acknowledged.Select(a => a.At).Order().ToList();
        return times.Zip(times.Skip(1), (one, next) => next - one).DefaultIfEmpty().Max();
    }

    /// <summary>The longest that one technician of a channel waited for an answer.</summary>
    public TimeSpan LongestWait(string channel) => acknowledged.Where(a => a.Channel == channel).Select(a => a.Wait).DefaultIfEmpty().Max();

    /// <summary>What of a channel's answers came within this time, by rank.</summary>
    public TimeSpan Wait(string channel, double rank)
    {
        var waits = acknowledged.Where(a => a.Channel == channel).Select(a => a.Wait).Order().ToList();
        return waits.Count == 0 ? default : waits[(int)((waits.Count - 1) * rank)];
    }
}

/// <summary>An answer that a technician got.</summary>
/// <param name="Conversation">The page's visit, or the phone's number.</param>
/// <param name="Reply">As it was given, or null where it came by text.</param>
internal sealed record Acknowledged(string Channel, string Conversation, string MessageId, string? Reply, TimeSpan At, TimeSpan Wait);
