using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using Assistant.Records.Log;

namespace Assistant.App.Hosting;

/// <summary>
/// Tells those who have a visit open that it may have grown. A signal comes at once for what this program stored, and at the latest
/// after a few seconds for what another one stored in the same records: whoever gets it reads the log.
/// </summary>
public sealed class VisitFeed : IDisposable
{
    /// <summary>How long another program's entry may stay unseen; also what keeps an idle connection from being cut on the way.</summary>
    private static readonly TimeSpan LongestSilence = TimeSpan.FromSeconds(5);

    private readonly EventLog log;
    private readonly ConcurrentDictionary<string, ImmutableList<Channel<int>>> watchers = new(StringComparer.Ordinal);

    public VisitFeed(EventLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        this.log = log;
        log.Grew += Tell;
    }

    /// <summary>Signals without end, the first at once.</summary>
    public async IAsyncEnumerable<bool> WatchAsync(string visitId, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var signals = Channel.CreateBounded<int>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
        watchers.AddOrUpdate(visitId, _ => [signals], (_, others) => others.Add(signals));
        try
        {
            yield return true;
            while (!cancellation.IsCancellationRequested)
            {
                yield return await ComesAsync(signals.Reader, cancellation);
            }
        }
        finally
        {
            Leave(visitId, signals);
        }
    }

    public void Dispose() => log.Grew -= Tell;

    /// <summary>True for a signal, false where the silence was long enough to look again.</summary>
    private static async Task<bool> ComesAsync(ChannelReader<int> signals, CancellationToken cancellation)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(LongestSilence);
        try
        {
            await signals.ReadAsync(patience.Token);
            return true;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return false;
        }
    }

    private void Tell(object? sender, VisitGrew grew)
    {
        foreach (var watcher in watchers.GetValueOrDefault(grew.VisitId, []))
        {
            watcher.Writer.TryWrite(grew.Version);
        }
    }

    private void Leave(string visitId, Channel<int> signals)
    {
        while (watchers.TryGetValue(visitId, out var all))
        {
            var left = all.Remove(signals);
            var isDone = left.IsEmpty
                ? watchers.TryRemove(KeyValuePair.Create(visitId, all))
                : watchers.TryUpdate(visitId, left, all);
            if (isDone)
            {
                return;
            }
        }
    }
}
