using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Cylinders;

/// <summary>What follows by itself from what was told of a cylinder, and the one thing that still lacks.</summary>
internal static class CylinderSettling
{
    /// <summary>Scales are read to an ounce: amounts and weights that differ by less agree.</summary>
    private const long ScaleError = 30;

    /// <summary>Fills in what follows: which way it went by the weights, the cylinder's kind by the way, the system's refrigerant.</summary>
    public static CylinderNoted Settle(CylinderNoted told, string? systemRefrigerant)
    {
        var purpose = told.Purpose ?? WayOf(told);
        var kind = told.CylinderKind ?? purpose switch
        {
            "recover" => "recovery",
            null => null,
            _ => "supply",
        };
        return told with { Purpose = purpose, CylinderKind = kind, Refrigerant = told.Refrigerant ?? (told.IsUse ? systemRefrigerant : null) };
    }

    /// <summary>What must be asked next, one thing at a time; null where nothing lacks.</summary>
    public static string? Missing(CylinderNoted told)
    {
        if (told.Tag is null)
        {
            return "tag";
        }

        if (told.TareGrams is null)
        {
            return "tare";
        }

        if (!told.IsUse)
        {
            return told.BeforeGrams is null || !told.IsWeighedHere ? "before" : NeedsCapacity(told) ? "water-capacity" : null;
        }

        if (told.BeforeGrams is null && (told.AfterGrams is null || told.AmountGrams is null))
        {
            return "before";
        }

        var isLoss = told.Purpose == CylinderNames.Of(EntryPurpose.HoseLoss);
        if (told.AfterGrams is null && (told.AmountGrams is null || told.Purpose == CylinderNames.Of(EntryPurpose.Transfer)) && !(isLoss && told.LossGrams is not null))
        {
            return "after";
        }

        return told.Purpose is null ? "purpose" : told.Refrigerant is null ? "refrigerant" : NeedsCapacity(told) ? "water-capacity" : null;
    }

    /// <summary>True where the scale and the amount that was said do not tell the same.</summary>
    public static bool Disagrees(CylinderNoted told)
    {
        if (told is not { BeforeGrams: { } before, AfterGrams: { } after, AmountGrams: { } amount })
        {
            return false;
        }

        var moved = Math.Abs(before - after);
        return Math.Abs(moved - amount) > ScaleError && Math.Abs(moved - amount - (told.LossGrams ?? 0)) > ScaleError;
    }

    // Lighter: it went into the system. Heavier: it came out of it, if the cylinder is one for that.
    private static string? WayOf(CylinderNoted told) => told is not { BeforeGrams: { } before, AfterGrams: { } after } ? null
        : after < before && told.CylinderKind != "recovery" ? CylinderNames.Of(EntryPurpose.Charge)
        : after > before && told.CylinderKind == "recovery" ? CylinderNames.Of(EntryPurpose.Recover)
        : null;

    // How full it may be can not be told without; asked once.
    private static bool NeedsCapacity(CylinderNoted told) =>
        told is { CylinderKind: "recovery", WaterCapacityGrams: null } && told.Purpose is null or "recover" or "transfer";
}
