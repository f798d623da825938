using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Chain;

/// <summary>
/// Goes through the log and recomputes every hash: a stored event that was changed, added, moved or removed after the fact does
/// not fit. The chain shows that something was changed, not who did it; whoever can rewrite the whole file can rewrite the
/// chain, so the head printed on a report is the outside witness.
/// </summary>
public sealed class ChainVerifier(IRecordsDatabase database)
{
    /// <summary>Checks one visit, or all of them in the order they were named.</summary>
    public Task<ChainVerdict> VerifyAsync(string? visitId = null, CancellationToken cancellation = default) => database.UseAsync(async context =>
    {
        var visits = await context.Visits.AsNoTracking().Where(v => visitId == null || v.Id == visitId)
            .OrderBy(v => v.Id).Select(v => new Head(v.Id, v.Version, v.HeadHash)).ToListAsync(cancellation);
        var events = 0;
        foreach (var visit in visits)
        {
            var rows = await context.Events.AsNoTracking().Where(e => e.VisitId == visit.Id).OrderBy(e => e.Number).ToListAsync(cancellation);
            events += rows.Count;
            if (Check(visit.Id, visit.Version, visit.HeadHash, rows) is { } broken)
            {
                return new ChainVerdict(visits.Count, events, broken);
            }
        }

        return new ChainVerdict(visits.Count, events, null);
    });

    /// <summary>The first row that does not fit, or null where all do and they end at the given head.</summary>
    internal static BrokenLink? Check(string visitId, int version, byte[] head, IReadOnlyList<EventRow> rows)
    {
        var hash = EventChain.Start(visitId);
        for (var i = 0; i < rows.Count; i++)
        {
            if (WhyNot(rows[i], i + 1, hash) is { } why)
            {
                return new(visitId, i + 1, why);
            }

            hash = rows[i].Hash;
        }

        if (rows.Count != version || !hash.AsSpan().SequenceEqual(head))
        {
            return new(visitId, Math.Min(rows.Count, version) + 1, $"The log ends at event {rows.Count}, the visit says {version}: events are missing or were added.");
        }

        var erased = Erasures(rows);
        return rows.FirstOrDefault(row => row.Personal is null && !erased.Contains(row.Number)) is { } unaccounted
            ? new(visitId, unaccounted.Number, "Its words are gone and no erasure accounts for it.")
            : null;
    }

    private static string? WhyNot(EventRow row, int number, byte[] head)
    {
        if (row.Number != number)
        {
            return $"Event {number} is missing; the next one is {row.Number}.";
        }

        if (!row.PrevHash.AsSpan().SequenceEqual(head))
        {
            return "It does not follow the event before it.";
        }

        if (row.Personal is { } personal && !EventChain.PersonalDigest(row.Salt ?? [], personal).AsSpan().SequenceEqual(row.PersonalDigest))
        {
            return "Its name or words were changed.";
        }

        return EventChain.HashOf(row).AsSpan().SequenceEqual(row.Hash) ? null : "Its content was changed.";
    }

    private static HashSet<int> Erasures(IEnumerable<EventRow> rows) =>
    [
        .. rows.Where(row => row.Kind == EventJson.PersonErasedKind)
            .SelectMany(row => ((PersonErased)EventJson.Read(row.Kind, row.Body, row.Personal, row.Number)).Events),
    ];

    private sealed record Head(string Id, int Version, byte[] HeadHash);
}
