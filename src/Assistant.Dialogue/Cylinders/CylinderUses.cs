using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Cylinders;

/// <summary>Makes of what was told of a cylinder the uses that stand in the ledger.</summary>
internal static class CylinderUses
{
    /// <param name="told">With nothing missing.</param>
    /// <param name="idOf">The id of the use of that number, from 0.</param>
    public static ImmutableArray<CylinderUsed> Of(CylinderNoted told, Func<int, string> idOf)
    {
        var (loss, amount) = (told.LossGrams ?? 0, told.AmountGrams ?? 0);
        switch (CylinderNames.Purpose(told.Purpose!))
        {
            // By the scale the loss is part of what left; said as amounts, it comes on top.
            case EntryPurpose.Charge:
                var before = told.BeforeGrams ?? told.AfterGrams!.Value + amount;
                var after = told.AfterGrams ?? before - amount - loss;
                var charged = Use(told, idOf(0), EntryPurpose.Charge, before, after + loss);
                return loss > 0 ? [charged, Use(told, idOf(1), EntryPurpose.HoseLoss, after + loss, after)] : [charged];
            case EntryPurpose.Recover:
                var empty = told.BeforeGrams ?? told.AfterGrams!.Value - amount;
                return [Use(told, idOf(0), EntryPurpose.Recover, empty, told.AfterGrams ?? empty + amount)];
            case EntryPurpose.HoseLoss:
                return [Use(told, idOf(0), EntryPurpose.HoseLoss, told.BeforeGrams!.Value, told.AfterGrams ?? told.BeforeGrams.Value - Math.Max(loss, amount))];
            default:
                return [Use(told, idOf(0), EntryPurpose.Transfer, told.BeforeGrams ?? told.AfterGrams!.Value, told.AfterGrams ?? told.BeforeGrams!.Value)];
        }
    }

    /// <summary>A loss told after the charge it happened with: it was part of what left the cylinder. Null where there was no such charge.</summary>
    public static ImmutableArray<CylinderUsed>? Split(CylinderUsed? last, CylinderNoted loss, Func<int, string> idOf)
    {
        var isWithin = last is { Purpose: "charge" } && loss is { Purpose: "hose-loss", AfterGrams: null, LossGrams: { } lost }
            && last.Tag.Equals(loss.Tag, StringComparison.OrdinalIgnoreCase) && last.GrossAfterGrams == loss.BeforeGrams && last.GrossBeforeGrams - last.GrossAfterGrams > lost;
        return isWithin
            ?
            [
                Use(loss, idOf(0), EntryPurpose.Charge, last!.GrossBeforeGrams, last.GrossAfterGrams + loss.LossGrams!.Value) with { Replaces = last.Number },
                Use(loss, idOf(1), EntryPurpose.HoseLoss, last.GrossAfterGrams + loss.LossGrams.Value, last.GrossAfterGrams),
            ]
            : null;
    }

    private static CylinderUsed Use(CylinderNoted told, string id, EntryPurpose purpose, long before, long after) => new(
        id, told.Tag!, told.CylinderKind!, CylinderNames.Of(purpose), told.Refrigerant!, told.TareGrams!.Value, before, after,
        told.WaterCapacityGrams is > 0 and var capacity ? capacity : null) { At = told.At, By = told.By, Reason = told.Reason };
}
