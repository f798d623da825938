using System.Collections.Immutable;

namespace Assistant.Trade.Ledgers;

/// <summary>Folds a ledger's entries to balances, cylinder by cylinder in order of time.</summary>
internal static class LedgerFold
{
    public static LedgerBalances Of(CylinderLedger ledger)
    {
        var cylinders = ImmutableSortedDictionary.CreateBuilder<string, CylinderBalance>(StringComparer.OrdinalIgnoreCase);
        var gaps = ImmutableArray.CreateBuilder<LedgerGap>();
        var mixes = ImmutableArray.CreateBuilder<RefrigerantMix>();
        foreach (var group in ledger.Entries.GroupBy(e => e.Tag, StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase))
        {
            var cylinder = ledger.Cylinders[group.Key];
            var entries = EntryOrder.Of(group);
            var own = Gaps(cylinder.Tag, entries);
            gaps.AddRange(own);
            var (refrigerants, met) = Contents(cylinder, entries);
            mixes.AddRange(met);
            cylinders.Add(cylinder.Tag, new CylinderBalance(
                cylinder.Tag,
                Opening: entries[0].GrossBefore - cylinder.Tare,
                Charged: Lost(entries, EntryPurpose.Charge),
                Recovered: Gained(entries, EntryPurpose.Recover),
                HoseLoss: Lost(entries, EntryPurpose.HoseLoss),
                TransferredIn: Gained(entries, EntryPurpose.Transfer),
                TransferredOut: Lost(entries, EntryPurpose.Transfer),
                Unexplained: Sum(own.Select(g => g.Difference)),
                Remaining: entries[^1].GrossAfter - cylinder.Tare,
                refrigerants));
        }

        return new LedgerBalances(
            cylinders.ToImmutable(),
            Assets(ledger.Entries),
            gaps.ToImmutable(),
            mixes.ToImmutable(),
            Sum(cylinders.Values.Select(c => c.TransferredOut - c.TransferredIn)));
    }

    private static ImmutableSortedDictionary<string, AssetBalance> Assets(IEnumerable<CylinderEntry> entries) => entries
        .Where(e => e.AssetId is not null && e.Purpose is EntryPurpose.Charge or EntryPurpose.Recover)
        .GroupBy(e => e.AssetId!, StringComparer.Ordinal)
        .ToImmutableSortedDictionary(
            g => g.Key,
            g => new AssetBalance(g.Key, Lost(g, EntryPurpose.Charge), Gained(g, EntryPurpose.Recover)),
            StringComparer.Ordinal);

    private static List<LedgerGap> Gaps(string tag, ImmutableArray<CylinderEntry> entries) => entries
        .Zip(entries.Skip(1))
        .Where(pair => pair.First.GrossAfter != pair.Second.GrossBefore)
        .Select(pair => new LedgerGap(tag, pair.First, pair.Second, pair.Second.GrossBefore - pair.First.GrossAfter))
        .ToList();

    private static (ImmutableSortedSet<string> Present, List<RefrigerantMix> Mixes) Contents(Cylinder cylinder, ImmutableArray<CylinderEntry> entries)
    {
        var label = cylinder.Refrigerant is null ? [] : ImmutableSortedSet.Create(StringComparer.OrdinalIgnoreCase, cylinder.Refrigerant);
        var present = label.WithComparer(StringComparer.OrdinalIgnoreCase);
        var mixes = new List<RefrigerantMix>();
        foreach (var entry in entries)
        {
            if (entry.GrossBefore == entry.Tare)
            {
                present = label.WithComparer(StringComparer.OrdinalIgnoreCase);
            }

            // Before the first record an unlabelled cylinder holds what is said of it first.
            if (!present.IsEmpty && !present.Contains(entry.Refrigerant))
            {
                mixes.Add(new RefrigerantMix(cylinder.Tag, entry, present));
            }

            if (entry.Gain > Grams.Zero || present.IsEmpty)
            {
                present = present.Add(entry.Refrigerant);
            }
        }

        return (present, mixes);
    }

    private static Grams Gained(IEnumerable<CylinderEntry> entries, EntryPurpose purpose) =>
        Sum(entries.Where(e => e.Purpose == purpose && e.Gain > Grams.Zero).Select(e => e.Gain));

    private static Grams Lost(IEnumerable<CylinderEntry> entries, EntryPurpose purpose) =>
        Sum(entries.Where(e => e.Purpose == purpose && e.Gain < Grams.Zero).Select(e => Grams.Zero - e.Gain));

    private static Grams Sum(IEnumerable<Grams> masses) => masses.Aggregate(Grams.Zero, (sum, mass) => sum + mass);
}
