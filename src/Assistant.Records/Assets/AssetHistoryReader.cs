using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Readings;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Assets;

/// <summary>Reads what is known of a piece of equipment and what changed.</summary>
public sealed class AssetHistoryReader(EventLog log)
{
    private readonly AssetStore assets = new(log.Database);

    /// <param name="visits">How many visits to go back.</param>
    /// <returns>The history, or null where there is no such asset.</returns>
    public async Task<AssetHistory?> ReadAsync(string assetId, int visits = 20, CancellationToken cancellation = default)
    {
        if (await assets.FindAsync(assetId, cancellation) is not { } asset)
        {
            return null;
        }

        var (facts, rows) = await log.Database.UseAsync(async context => (
            await context.AssetFacts.AsNoTracking().Where(f => f.AssetId == assetId).OrderBy(f => f.Sequence).ToListAsync(cancellation),
            await context.Visits.AsNoTracking().Where(v => v.AssetId == assetId).OrderByDescending(v => v.OpenedAt).ThenByDescending(v => v.Id).Take(visits).ToListAsync(cancellation)));
        List<PastVisit> past = [];
        foreach (var row in rows)
        {
            past.Add(Of(row, await log.ReadAsync(row.Id, cancellation)));
        }

        return new(asset, Changes(facts), [.. past]);
    }

    private static PastVisit Of(VisitRow row, ImmutableArray<VisitEvent> events)
    {
        var withdrawn = VisitReadings.Withdrawals(events);
        var standing = events.Where(e => !withdrawn.ContainsKey(e.Number)).ToList();
        return new(row.Id, row.OpenedAt, row.ClosedAt, standing.OfType<VerdictGiven>().LastOrDefault(), VisitReadings.Of(events), [.. standing.OfType<FollowUpNoted>()])
        {
            Mended = [.. standing.OfType<FaultMended>().Select(m => m.Fault).Distinct()],
            Leaks = [.. standing.OfType<LeakFound>()],
        };
    }

    private static ImmutableArray<DetailChange> Changes(List<AssetFactRow> facts)
    {
        var known = new Dictionary<string, string>(StringComparer.Ordinal);
        var changes = ImmutableArray.CreateBuilder<DetailChange>();
        foreach (var fact in facts)
        {
            changes.Add(new(fact.Name, known.GetValueOrDefault(fact.Name), fact.Text, fact.At, fact.VisitId));
            known[fact.Name] = fact.Text;
        }

        return changes.ToImmutable();
    }
}
