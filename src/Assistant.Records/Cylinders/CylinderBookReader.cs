using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Cylinders;

/// <summary>Reads the cylinders' uses of all visits from the log; a use that was taken back does not count.</summary>
public sealed class CylinderBookReader(IRecordsDatabase database)
{
    /// <param name="until">Uses after this moment are left out; null takes all.</param>
    public async Task<ImmutableArray<RecordedUse>> UsesAsync(DateTimeOffset? until = null, CancellationToken cancellation = default)
    {
        var rows = await database.UseAsync(context => (
            from happened in context.Events.AsNoTracking()
            where happened.Kind == EventJson.CylinderUsedKind || happened.Kind == EventJson.EventWithdrawnKind
            join visit in context.Visits.AsNoTracking() on happened.VisitId equals visit.Id
            orderby happened.VisitId, happened.Number
            select new { happened, visit.AssetId }).ToListAsync(cancellation));
        try
        {
            var events = rows.ConvertAll(r => (r.happened.VisitId, r.AssetId, Event: EventJson.Read(r.happened.Kind, r.happened.Body, r.happened.Personal, r.happened.Number)));
            var withdrawn = events.Where(e => e.Event is EventWithdrawn).Select(e => (e.VisitId, ((EventWithdrawn)e.Event).Withdrawn)).ToHashSet();
            return
            [
                .. events.Where(e => e.Event is CylinderUsed && !withdrawn.Contains((e.VisitId, e.Event.Number)))
                    .Where(e => until is null || e.Event.At <= until)
                    .Select(e => new RecordedUse(e.VisitId, e.AssetId, (CylinderUsed)e.Event)),
            ];
        }
        catch (JsonException unknown)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"A cylinder's use can not be read: {unknown.Message}", unknown);
        }
    }

    /// <summary>The book of those uses.</summary>
    public async Task<CylinderBook> ReadAsync(DateTimeOffset? until = null, CancellationToken cancellation = default) =>
        CylinderBook.Of(await UsesAsync(until, cancellation));
}
