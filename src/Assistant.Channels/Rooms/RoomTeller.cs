using System.Collections.Concurrent;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Rooms;

/// <summary>
/// Tells the rooms what is new on their visits: once nothing came for a moment, or something waited long enough. What was left untold when
/// the program stopped is told when it starts; what another program heard is found within seconds.
/// </summary>
internal sealed partial class RoomTeller(EventLog log, RoomStore rooms, RoomNews news, RoomSummaries summaries, RoomReminders reminders, RoomPace pace, TimeProvider clock, ILogger<RoomTeller> logger) : BackgroundService
{
    // By the running time and not by the clock, which may be set back.
    private readonly ConcurrentDictionary<string, (long First, long Last)> grown = new(StringComparer.Ordinal);
    private readonly RoomTroubles troubles = new();

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        log.Grew += Note;
        try
        {
            await Task.Delay(pace.BeforeTheFirst, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            long? looked = null;
            for (; !stoppingToken.IsCancellationRequested; await Task.Delay(pace.Beat, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing))
            {
                var ready = grown.Where(g => pace.IsOver(clock.GetElapsedTime(g.Value.First), clock.GetElapsedTime(g.Value.Last))).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
                var isLook = looked is not { } last || clock.GetElapsedTime(last) >= pace.BetweenLooks;
                if (ready.Count == 0 && !isLook)
                {
                    continue;
                }

                looked = isLook ? clock.GetTimestamp() : looked;
                await TellAllAsync(ready, isLook, stoppingToken);
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

        if (isLook)
        {
            await GuardAsync("reminders", "reminders", () => reminders.GiveDueAsync(cancellation), cancellation);
        }

        await GuardAsync("rooms", "all rooms", async () =>
        {
            // All rooms are looked through every few seconds only; what grew here is found by its visit.
            foreach (var room in await (isLook ? rooms.BehindAsync(cancellation) : rooms.BehindAsync(ready, cancellation)))
            {
                // Found by looking: another program heard it, or this one was stopped. What is under way here has its own time.
                if (ready.Contains(room.VisitId!) || (isLook && !grown.ContainsKey(room.VisitId!)))
                {
                    await GuardAsync($"{room.Channel} {room.Conversation}", $"{room.Channel}, visit {room.VisitId}", () => TellAsync(room, cancellation), cancellation);
                }
            }
        }, cancellation);
    }

    // One room that can not be told must hold up neither the others nor the program: what is untold is found at the next look. Its failure
    // is logged once and not at every look; a conversation's name may be a person's and stays out of the log.
    private async Task GuardAsync(string key, string what, Func<Task> tell, CancellationToken cancellation)
    {
        try
        {
            await tell();
            if (troubles.IsOver(key))
            {
                GoesOn(logger, what);
            }
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // It is stopping: what is untold is told when it starts.
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            if (troubles.IsNews(key, failure))
            {
                Waits(logger, what, failure.Message);
            }
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
        var now = clock.GetTimestamp();
        grown.AddOrUpdate(grew.VisitId, (now, now), (_, before) => (before.First, now));
    }

    [LoggerMessage(LogLevel.Error, "Rooms: what is new waits ({What}); it is tried again, and this is said once: {Message}")]
    private static partial void Waits(ILogger logger, string what, string message);

    [LoggerMessage(LogLevel.Information, "Rooms: it goes on again ({What})")]
    private static partial void GoesOn(ILogger logger, string what);
}
