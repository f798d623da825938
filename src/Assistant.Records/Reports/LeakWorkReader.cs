using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Reports.Model;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Reports;

/// <summary>Reads what was done about an equipment's leaks from the logs of all visits to it; what was taken back does not count.</summary>
public sealed class LeakWorkReader(EventLog log)
{
    // Few of a log's many events: the others are not read.
    private static readonly ImmutableArray<string> Kinds =
    [
        "leak-found", "fault-mended", "judgement-given", "stop-chosen", "stop-skipped", "walk-started", "walk-finished", EventJson.EventWithdrawnKind,
    ];

    /// <param name="until">What happened after this moment is left out.</param>
    public async Task<LeakWork> ReadAsync(string assetId, DateTimeOffset until, CancellationToken cancellation = default)
    {
        var kinds = Kinds.ToArray();
        var rows = await log.Database.UseAsync(async context =>
        {
            // By their visits first: else every event of the records would be looked at.
            var visits = await context.Visits.Where(v => v.AssetId == assetId).Select(v => v.Id).ToListAsync(cancellation);
            return await context.Events.AsNoTracking().Where(e => visits.Contains(e.VisitId) && kinds.Contains(e.Kind))
                .Select(e => new { e.VisitId, e.Number, e.Kind, e.Body, e.Personal }).ToListAsync(cancellation);
        });
        try
        {
            var told = rows.Select(r => (r.VisitId, Event: EventJson.Read(r.Kind, r.Body, r.Personal, r.Number))).ToList();
            var withdrawn = told.Where(t => t.Event is EventWithdrawn).Select(t => (t.VisitId, ((EventWithdrawn)t.Event).Withdrawn)).ToHashSet();
            return LeakWork.Of(told
                .Where(t => t.Event.At <= until && !withdrawn.Contains((t.VisitId, t.Event.Number)))
                .OrderBy(t => t.Event.At).ThenBy(t => t.VisitId, StringComparer.Ordinal).ThenBy(t => t.Event.Number));
        }
        catch (JsonException unknown)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"What was done about a leak can not be read: {unknown.Message}", unknown);
        }
    }
}
