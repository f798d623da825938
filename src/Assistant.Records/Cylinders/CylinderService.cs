using System.Collections.Immutable;
using Assistant.Dialogue.Cylinders;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Rules;

namespace Assistant.Records.Cylinders;

/// <summary>
/// Records what cylinders gave and took on a visit. A cylinder that would be too full, contents below nothing and a scale that
/// moved the wrong way are refused with the one reason; a weight that does not follow from the last one is recorded, for it
/// happened, and the remark names the gap.
/// </summary>
public sealed class CylinderService(EventLog log)
{
    private const int Attempts = 20;

    private readonly CylinderBookReader reader = new(log);

    /// <exception cref="RecordsException">There is no such visit, a word or a weight can not be taken, or the records can not be written.</exception>
    public async Task<CylinderUseResult> RecordAsync(string visitId, CylinderUse use, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(use);
        var used = EventOf(use);
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            var events = await log.ReadAsync(visitId, cancellation);
            if (events.IsEmpty)
            {
                throw new RecordsException(RecordsFault.Refused, $"There is no visit {visitId}. Open it first, then note the cylinder on it.");
            }

            var uses = await reader.UsesAsync(cancellation: cancellation);
            var wasThere = uses.Any(u => u.VisitId == visitId && u.Used.EntryId == used.EntryId);
            var (book, admission) = CylinderBook.Of(uses).Take(new(visitId, ((VisitOpened)events[0]).AssetId, used));
            if (admission.Refusal is { } refusal)
            {
                return new(LedgerSentences.Of(refusal), []);
            }

            if (wasThere || await log.AppendAsync(new(visitId, events.Length, [used])) is Appended)
            {
                return new(null, Remarks(book.Ledger.Balances(), used, admission), wasThere);
            }
        }

        throw new RecordsException(RecordsFault.Contended, "Others wrote to this visit at the same time again and again. The cylinder was not noted; say it again.");
    }

    private static CylinderUsed EventOf(CylinderUse use)
    {
        if (string.IsNullOrWhiteSpace(use.Tag) || string.IsNullOrWhiteSpace(use.EntryId) || string.IsNullOrWhiteSpace(use.Refrigerant))
        {
            throw new RecordsException(RecordsFault.Refused, "A cylinder is noted by its tag, its refrigerant and an id of the use; one of them is missing.");
        }

        return new(
            use.EntryId, use.Tag.Trim(), CylinderNames.Of(use.Kind), CylinderNames.Of(use.Purpose), use.Refrigerant.Trim(),
            use.Tare.Value, use.GrossBefore.Value, use.GrossAfter.Value, use.WaterCapacity?.Value) { At = use.At, By = use.Person };
    }

    private static ImmutableArray<Reason> Remarks(LedgerBalances balances, CylinderUsed used, Admission admission) =>
    [
        .. balances.Gaps.Where(g => g.Later.Id == used.EntryId || g.Earlier.Id == used.EntryId).Select(LedgerSentences.Of),
        .. balances.Mixes.Where(m => m.Entry.Id == used.EntryId).Select(LedgerSentences.Of),
        .. used.GrossAfterGrams > used.GrossBeforeGrams && admission.FillLimit is null ? [new Reason("ledger.fill-not-judged", ("tag", used.Tag))] : Array.Empty<Reason>(),
    ];
}
