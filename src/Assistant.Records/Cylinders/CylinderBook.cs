using System.Collections.Immutable;
using Assistant.Dialogue.Cylinders;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;

namespace Assistant.Records.Cylinders;

/// <summary>
/// The house's cylinders over all visits: the fold of every use on record. Uses may be told late and in any order; a use that
/// could not be taken in (another release or installation recorded it) is kept apart and named.
/// </summary>
public sealed class CylinderBook
{
    private CylinderBook(CylinderLedger ledger, ImmutableArray<Refusal> refused) => (Ledger, Refused) = (ledger, refused);

    public static CylinderBook Empty { get; } = new(CylinderLedger.Empty, []);

    public CylinderLedger Ledger { get; }

    /// <summary>Uses on record that do not fit their cylinder.</summary>
    public ImmutableArray<Refusal> Refused { get; }

    /// <summary>The fold of the uses, by the time of the scale reading, whatever the order they are given in.</summary>
    public static CylinderBook Of(IEnumerable<RecordedUse> uses)
    {
        ArgumentNullException.ThrowIfNull(uses);
        return uses.OrderBy(u => u.Used.At.UtcTicks).ThenBy(u => u.Used.EntryId, StringComparer.Ordinal).Aggregate(Empty, (book, use) => book.Take(use).Book);
    }

    /// <summary>Takes one more use in, or says why not.</summary>
    public (CylinderBook Book, Admission Admission) Take(RecordedUse use)
    {
        ArgumentNullException.ThrowIfNull(use);
        var admission = Ledger.Admit(use.Used, use.AssetId ?? use.VisitId);
        return admission.Refusal is { } refusal
            ? (new(Ledger, Refused.Add(refusal)), admission)
            : (new(admission.Ledger, Refused), admission);
    }
}

/// <summary>A use with the visit it stands on.</summary>
/// <param name="AssetId">The visit's equipment; where it has none on record, the visit stands for it.</param>
public sealed record RecordedUse(string VisitId, string? AssetId, CylinderUsed Used);
