using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Assistant.App.Hosting;

namespace Assistant.App.Web;

/// <summary>
/// A visit as it happens, for everyone who has it open: what was said, by whom and from where, and how the visit stands after it.
/// Each entry's id is its place in the visit's log; a page that lost the connection names the last one it saw and gets what it missed,
/// nothing twice.
/// </summary>
internal static class VisitStream
{
    public static void MapVisitStream(this WebApplication app) => app.MapGet("/api/visits/{id}/events", FollowAsync);

    /// <param name="after">The last entry seen, where the browser does not say it itself (it does after a lost connection).</param>
    private static async Task<IResult> FollowAsync(
        string id, int? after, HttpRequest request, CallRoom room, VisitViews views, VisitFeed feed, IHostApplicationLifetime life, CancellationToken cancellation)
    {
        var visit = await room.VisitAsync(id, cancellation);
        var seen = int.TryParse(request.Headers["Last-Event-ID"], out var last) ? last : after ?? 0;
        return TypedResults.ServerSentEvents(EntriesAsync(id, visit, seen, room, views, feed, life.ApplicationStopping, cancellation));
    }

    private static async IAsyncEnumerable<SseItem<object>> EntriesAsync(
        string id, string visit, int seen, CallRoom room, VisitViews views, VisitFeed feed, CancellationToken stopping, [EnumeratorCancellation] CancellationToken cancellation)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stopping, cancellation);
        var isFirst = true;
        await using var signals = feed.WatchAsync(visit, end.Token).GetAsyncEnumerator(end.Token);
        while (await NextAsync(signals))
        {
            var events = await room.Log.ReadAsync(visit, cancellation);
            var version = events.Length;
            if (version > seen || isFirst)
            {
                foreach (var happened in events.Where(e => e.Number > seen))
                {
                    if (await views.EntryAsync(happened, cancellation) is { } entry)
                    {
                        yield return Item(entry, entry is PictureEntry ? "picture" : "turn", happened.Number);
                    }
                }

                yield return Item(await views.NowAsync(id, visit, cancellation), "visit", version);
                (seen, isFirst) = (version, false);
            }
            else
            {
                yield return Item(new { }, "quiet", seen);
            }
        }
    }

    private static SseItem<object> Item(object content, string kind, int number) =>
        new(content, kind) { EventId = number.ToString(System.Globalization.CultureInfo.InvariantCulture), ReconnectionInterval = TimeSpan.FromSeconds(2) };

    private static async Task<bool> NextAsync(IAsyncEnumerator<bool> signals)
    {
        try
        {
            return await signals.MoveNextAsync();
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }
}
