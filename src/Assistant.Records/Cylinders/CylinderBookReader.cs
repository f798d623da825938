using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Cylinders;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Trade.Ledgers;

namespace Assistant.Records.Cylinders;

/// <summary>Reads the cylinders' uses of all visits from the log; a use that was taken back does not count.</summary>
public sealed class CylinderBookReader(EventLog log)
{
    private const int MostKnown = 40;

    private static readonly TimeSpan Recent = TimeSpan.FromDays(90);

    /// <param name="until">Uses after this moment are left out; null takes all.</param>
    public Task<ImmutableArray<RecordedUse>> UsesAsync(DateTimeOffset? until = null, CancellationToken cancellation = default) => UsesAsync(null, null, until, cancellation);

    private async Task<ImmutableArray<RecordedUse>> UsesAsync(DateTimeOffset? openedSince, DateTimeOffset? openedUntil, DateTimeOffset? until, CancellationToken cancellation)
    {
        var rows = await log.CylinderRowsAsync(openedSince, openedUntil, cancellation);
        try
        {
            var events = rows.Select(r => (r.VisitId, r.AssetId, Event: EventJson.Read(r.Kind, r.Body, r.Personal, r.Number))).ToList();
            var withdrawn = events.Where(e => e.Event is EventWithdrawn).Select(e => (e.VisitId, ((EventWithdrawn)e.Event).Withdrawn)).ToHashSet();
            return
            [
                .. events.Where(e => e.Event is CylinderUsed && !withdrawn.Contains((e.VisitId, e.Event.Number)))
                    .Where(e => until is null || e.Event.At <= until)
                    .GroupBy(e => (e.VisitId, e.AssetId))
                    .SelectMany(visit => CylinderUsed.Counting(visit.Select(e => (CylinderUsed)e.Event)).Select(u => new RecordedUse(visit.Key.VisitId, visit.Key.AssetId, u))),
            ];
        }
        catch (JsonException unknown)
        {
            throw new RecordsException(RecordsFault.Unreadable, $"A cylinder's use can not be read: {unknown.Message}", unknown);
        }
    }

    /// <summary>The cylinders used last, as they were left; what lies more than a quarter of a year back is told anew.</summary>
    public async Task<ImmutableArray<KnownCylinder>> LastUsedAsync(DateTimeOffset at, CancellationToken cancellation = default)
    {
        var uses = await UsesAsync(at - Recent, at, at, cancellation);
        var book = CylinderBook.Of(uses);
        var balances = book.Ledger.Balances();
        return
        [
            .. uses.OrderByDescending(u => u.Used.At).DistinctBy(u => u.Used.Tag, StringComparer.OrdinalIgnoreCase).Take(MostKnown)
                .Where(u => balances.Cylinders.ContainsKey(u.Used.Tag))
                .Select(u => Known(u.Used, book.Ledger.Cylinders[u.Used.Tag], balances.Cylinders[u.Used.Tag].Remaining)),
        ];
    }

    private static KnownCylinder Known(CylinderUsed used, Cylinder cylinder, Grams remaining) => new(
        cylinder.Tag, CylinderNames.Of(cylinder.Kind), used.Refrigerant, cylinder.Tare.Value, (cylinder.Tare + remaining).Value, cylinder.WaterCapacity?.Value);

    /// <summary>The book of those uses.</summary>
    public async Task<CylinderBook> ReadAsync(DateTimeOffset? until = null, CancellationToken cancellation = default) =>
        CylinderBook.Of(await UsesAsync(until, cancellation));
}
