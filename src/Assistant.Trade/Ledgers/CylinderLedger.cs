using System.Collections.Immutable;
using UnitsNet;

namespace Assistant.Trade.Ledgers;

/// <summary>
/// The refrigerant of a house by cylinder. Entries may arrive late and out of order: whether one is admitted depends on the
/// entry and its cylinder alone, and the balances depend only on which entries were admitted.
/// </summary>
public sealed class CylinderLedger
{
    private readonly ImmutableDictionary<string, CylinderEntry> entries;

    private CylinderLedger(ImmutableDictionary<string, Cylinder> cylinders, ImmutableDictionary<string, CylinderEntry> entries)
    {
        Cylinders = cylinders;
        this.entries = entries;
    }

    public static CylinderLedger Empty { get; } = new(
        ImmutableDictionary.Create<string, Cylinder>(StringComparer.OrdinalIgnoreCase),
        ImmutableDictionary.Create<string, CylinderEntry>(StringComparer.Ordinal));

    /// <summary>The cylinders by tag, without regard to case.</summary>
    public ImmutableDictionary<string, Cylinder> Cylinders { get; }

    /// <summary>The admitted entries, in no order.</summary>
    public IEnumerable<CylinderEntry> Entries => entries.Values;

    /// <summary>The ledger with this cylinder; a cylinder of the same tag is replaced (a corrected label or water capacity).</summary>
    /// <exception cref="ArgumentException">Entries of this tag stand on another tare: contents already reckoned would change.</exception>
    public CylinderLedger With(Cylinder cylinder)
    {
        ArgumentNullException.ThrowIfNull(cylinder);
        if (Entries.Any(e => e.Tag.Equals(cylinder.Tag, StringComparison.OrdinalIgnoreCase) && e.Tare != cylinder.Tare))
        {
            throw new ArgumentException($"cylinder {cylinder.Tag} has entries with another tare than {cylinder.Tare}", nameof(cylinder));
        }

        return new CylinderLedger(Cylinders.SetItem(cylinder.Tag, cylinder), entries);
    }

    /// <summary>
    /// Takes an entry in, or says why not. An entry that is already there changes nothing.
    /// A weight that does not follow from the last one is admitted: it happened, and the balance names the gap.
    /// </summary>
    /// <param name="liquidDensityAt25C">Density of the saturated liquid of a refrigerant at 25 degC / 77 degF, or null where it is not known.</param>
    public Admission Admit(CylinderEntry entry, Func<string, Density?> liquidDensityAt25C)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(liquidDensityAt25C);
        if (entries.TryGetValue(entry.Id, out var known))
        {
            return new Admission(this, known == entry ? null : new Refusal(RefusalReason.IdTaken, entry));
        }

        if (!Cylinders.TryGetValue(entry.Tag, out var cylinder))
        {
            return new Admission(this, new Refusal(RefusalReason.UnknownCylinder, entry));
        }

        var limit = entry.Gain > Grams.Zero ? MaximumContents(cylinder, entry.Refrigerant, liquidDensityAt25C) : null;
        return Check(entry, cylinder, limit) is { } refusal
            ? new Admission(this, refusal, limit)
            : new Admission(new CylinderLedger(Cylinders, entries.Add(entry.Id, entry)), null, limit);
    }

    /// <summary>What each asset received and gave, what each cylinder holds, and where the weights do not follow from one another.</summary>
    public LedgerBalances Balances() => LedgerFold.Of(this);

    private static Refusal? Check(CylinderEntry entry, Cylinder cylinder, Grams? limit)
    {
        if (entry.Tare != cylinder.Tare)
        {
            return new Refusal(RefusalReason.TareDiffers, entry, entry.Tare, cylinder.Tare);
        }

        var least = entry.GrossBefore < entry.GrossAfter ? entry.GrossBefore : entry.GrossAfter;
        if (least < entry.Tare || entry.Tare < Grams.Zero)
        {
            return new Refusal(RefusalReason.NegativeContents, entry, least, entry.Tare);
        }

        if (GoesTheWrongWay(entry))
        {
            return new Refusal(RefusalReason.WrongDirection, entry, entry.GrossAfter, entry.GrossBefore);
        }

        if (entry.Purpose is EntryPurpose.Charge or EntryPurpose.Recover && string.IsNullOrWhiteSpace(entry.AssetId))
        {
            return new Refusal(RefusalReason.AssetMissing, entry);
        }

        return entry.ContentsAfter > limit
            ? new Refusal(RefusalReason.OverFull, entry, entry.ContentsAfter, limit)
            : null;
    }

    /// <summary>
    /// The most this cylinder may hold once this refrigerant is in it, or null where its water capacity or a density is not known.
    /// The lighter of what the label says and what goes in decides.
    /// </summary>
    public static Grams? MaximumContents(Cylinder cylinder, string refrigerant, Func<string, Density?> liquidDensityAt25C)
    {
        ArgumentNullException.ThrowIfNull(cylinder);
        ArgumentNullException.ThrowIfNull(liquidDensityAt25C);
        if (cylinder.WaterCapacity is not { } capacity || liquidDensityAt25C(refrigerant) is not { } added)
        {
            return null;
        }

        var labelled = cylinder.Refrigerant is null ? added : liquidDensityAt25C(cylinder.Refrigerant) ?? added;
        return FillLimit.MaximumContents(capacity, labelled < added ? labelled : added);
    }

    private static bool GoesTheWrongWay(CylinderEntry entry) => entry.Purpose switch
    {
        EntryPurpose.Charge or EntryPurpose.HoseLoss => entry.Gain > Grams.Zero,
        EntryPurpose.Recover => entry.Gain < Grams.Zero,
        _ => false,
    };
}
