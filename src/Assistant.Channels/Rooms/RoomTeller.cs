using System.Collections.Concurrent;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Rooms;

/// <summary>
/// Tells the rooms what is new on their visits: once nothing came for a moment, or something waited long enough. What was left untold when
/// the program stopped is told when it starts; what another program heard is found within seconds.
/// </summary>
internal sealed partial class RoomTeller(EventLog log, RoomStore rooms, RoomNews news, RoomSummaries summaries, RoomReminders reminders, RoomPace pace, TimeProvider clock, ILogger<RoomTeller> logger) : BackgroundService
{
    private readonly ConcurrentDictionary<string, (DateTimeOffset First, DateTimeOffset Last)> grown = new(StringComparer.Ordinal);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        log.Grew += Note;
        try
        {
            var looked = DateTimeOffset.MinValue;
            for (; !stoppingToken.IsCancellationRequested; await Task.Delay(pace.Beat, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing))
            {
                var now = clock.GetUtcNow();
                var ready = grown.Where(g => pace.IsOver(g.Value.First, g.Value.Last, now)).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
                if (ready.Count == 0 && now - looked < pace.BetweenLooks)
                {
                    continue;
                }

                looked = now - looked < pace.BetweenLooks ? looked : now;
                await TellAllAsync(ready, isLook: looked == now, stoppingToken);
            }
        }
        finally
        {
            log.Grew -= Note;
        }
    }

    private async Task TellAllAsync(HashSet<string> ready, bool isLook, CancellationToken cancellation)
    {
        foreach (var visit in ready)
        {
            grown.TryRemove(visit, out _);
        }

        try
        {
            if (isLook)
            {
                await reminders.GiveDueAsync(cancellation);
            }

            foreach (var room in await rooms.BehindAsync(cancellation))
            {
                // Found by looking: another program heard it, or this one was stopped. What is under way here has its own time.
                if (ready.Contains(room.VisitId!) || (isLook && !grown.ContainsKey(room.VisitId!)))
                {
                    await TellAsync(room, cancellation);
                }
            }
        }
        catch (RecordsException failure)
        {
            Waits(logger, failure.Message);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // It is stopping: what is untold is told when it starts.
        }
    }

    /// <summary>Tells one room all that is new to it.</summary>
    private async Task TellAsync(Room room, CancellationToken cancellation)
    {
        var events = await log.ReadAsync(room.VisitId!, cancellation);
        if (events.Length > room.Told)
        {
            await rooms.ToldAsync(room, events.Length, news.Of(room, events, await rooms.ShownAsync(room, cancellation)), clock.GetUtcNow(), cancellation);
        }

        if (room.CanEdit)
        {
            await summaries.KeepAsync(room, events, cancellation);
        }
    }

    private void Note(object? sender, VisitGrew grew)
    {
        var now = clock.GetUtcNow();
        grown.AddOrUpdate(grew.VisitId, (now, now), (_, before) => (before.First, now));
    }

    [LoggerMessage(LogLevel.Error, "Rooms: what is new waits: {Message}")]
    private static partial void Waits(ILogger logger, string message);
}
