using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Dialogue.Cylinders;

/// <summary>Takes uses as they stand in a visit's log into a ledger.</summary>
public static class LedgerUses
{
    /// <summary>Takes the use in, or says why not. The first use of a tag tells what the cylinder is.</summary>
    /// <param name="assetId">The equipment charged or recovered from.</param>
    public static Admission Admit(this CylinderLedger ledger, CylinderUsed used, string assetId)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(used);
        var entry = EntryOf(used, assetId);
        return WithCylinder(ledger, used, entry).Admit(entry, LiquidDensity);
    }

    /// <summary>Density of the saturated liquid at 25 degC / 77 degF; null for a refrigerant without a table.</summary>
    public static Density? LiquidDensity(string refrigerant) =>
        RefrigerantLibrary.Find(refrigerant) is { } found && found.Saturation.Temperatures.Contains(LiquidFill.Reference)
            ? found.Saturation.LiquidDensity(LiquidFill.Reference)
            : null;

    // A later use may add the water capacity nobody had read before.
    private static CylinderLedger WithCylinder(CylinderLedger ledger, CylinderUsed used, CylinderEntry entry)
    {
        var capacity = used.WaterCapacityGrams is { } grams and > 0 ? new Grams(grams) : (Grams?)null;
        if (!ledger.Cylinders.TryGetValue(used.Tag, out var known))
        {
            var kind = CylinderNames.Kind(used.CylinderKind);
            return ledger.With(new(used.Tag, kind, kind == CylinderKind.Supply ? entry.Refrigerant : null, entry.Tare) { WaterCapacity = capacity });
        }

        return known.WaterCapacity is null && capacity is not null ? ledger.With(known with { WaterCapacity = capacity }) : ledger;
    }

    private static CylinderEntry EntryOf(CylinderUsed used, string assetId) => new()
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
        AssetId = assetId,
    };
}
