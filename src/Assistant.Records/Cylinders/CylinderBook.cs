using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;

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
        var entry = EntryOf(use);
        var admission = WithCylinder(use.Used, entry).Admit(entry, LiquidDensity);
        return admission.Refusal is { } refusal
            ? (new(Ledger, Refused.Add(refusal)), admission)
            : (new(admission.Ledger, Refused), admission);
    }

    /// <summary>Density of the saturated liquid at 25 degC / 77 degF; null for a refrigerant without a table.</summary>
    internal static Density? LiquidDensity(string refrigerant) =>
        RefrigerantLibrary.Find(refrigerant) is { } found && found.Saturation.Temperatures.Contains(LiquidFill.Reference)
            ? found.Saturation.LiquidDensity(LiquidFill.Reference)
            : null;

    // The first use tells what the cylinder is; a later one may add the water capacity nobody had read before.
    private CylinderLedger WithCylinder(CylinderUsed used, CylinderEntry entry)
    {
        var capacity = used.WaterCapacityGrams is { } grams and > 0 ? new Grams(grams) : (Grams?)null;
        if (!Ledger.Cylinders.TryGetValue(used.Tag, out var known))
        {
            var kind = CylinderNames.Kind(used.CylinderKind);
            return Ledger.With(new(used.Tag, kind, kind == CylinderKind.Supply ? entry.Refrigerant : null, entry.Tare) { WaterCapacity = capacity });
        }

        return known.WaterCapacity is null && capacity is not null ? Ledger.With(known with { WaterCapacity = capacity }) : Ledger;
    }

    private static CylinderEntry EntryOf(RecordedUse use)
    {
        var used = use.Used;
        return new()
        {
            Id = used.EntryId,
            At = used.At,
            By = used.By,
            Tag = used.Tag,
            Tare = new(used.TareGrams),
            GrossBefore = new(used.GrossBeforeGrams),
            GrossAfter = new(used.GrossAfterGrams),
            Purpose = CylinderNames.Purpose(used.Purpose),
            Refrigerant = RefrigerantLibrary.Find(used.Refrigerant)?.Designation ?? used.Refrigerant,
            AssetId = use.AssetId ?? use.VisitId,
        };
    }
}

/// <summary>A use with the visit it stands on.</summary>
/// <param name="AssetId">The visit's equipment; where it has none on record, the visit stands for it.</param>
public sealed record RecordedUse(string VisitId, string? AssetId, CylinderUsed Used);
