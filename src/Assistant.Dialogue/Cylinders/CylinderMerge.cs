using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Ledgers;

namespace Assistant.Dialogue.Cylinders;

/// <summary>Puts what a message says of a cylinder to what was told of it before.</summary>
internal static class CylinderMerge
{
    /// <param name="desk">The cylinders so far.</param>
    public static CylinderNoted Of(CylinderDesk desk, CylinderTold told)
    {
        var before = Base(desk, told);
        var asked = before.Asks;
        var (tare, weighs, capacity) = (told.Tare, told.Weighs, told.WaterCapacity);
        var (earlier, later) = (told.Before, told.After);
        if (told.Unnamed is { } mass)
        {
            switch (asked)
            {
                case "tare":
                    tare ??= mass;
                    break;
                case "before":
                    earlier ??= mass;
                    break;
                case "after":
                    later ??= mass;
                    break;
                case "water-capacity":
                    capacity ??= mass;
                    break;
                default:
                    weighs ??= mass;
                    break;
            }
        }

        // The first weight on this visit is the one before, unless refrigerant is said to have moved since the record's.
        var isFirst = before.BeforeGrams is null || (!before.IsWeighedHere && told.Purpose is null && before.Purpose is null) || asked == "before";
        var purpose = told.Purpose ?? (told.Loss is not null && !before.IsUse && later is null ? EntryPurpose.HoseLoss : null);
        return before with
        {
            CylinderKind = told.IsRecovery || told.Purpose == EntryPurpose.Recover ? CylinderNames.Of(CylinderKind.Recovery) : before.CylinderKind,
            Purpose = purpose is { } named ? CylinderNames.Of(named) : before.Purpose,
            Refrigerant = told.Refrigerant ?? before.Refrigerant,
            Reason = told.Reason ?? before.Reason,
            TareGrams = tare?.Value ?? before.TareGrams,
            BeforeGrams = earlier?.Value ?? (isFirst ? weighs?.Value : null) ?? before.BeforeGrams,
            AfterGrams = later?.Value ?? (isFirst ? null : weighs?.Value) ?? before.AfterGrams,
            AmountGrams = told.Amount?.Value ?? before.AmountGrams,
            LossGrams = told.Loss?.Value ?? before.LossGrams,
            WaterCapacityGrams = capacity?.Value ?? (asked == "water-capacity" && told.IsUnknown ? 0 : before.WaterCapacityGrams),
            IsWeighedHere = before.IsWeighedHere || earlier is not null || (isFirst && weighs is not null),
            Asks = null,
        };
    }

    private static CylinderNoted Base(CylinderDesk desk, CylinderTold told)
    {
        var current = desk.Current;
        if (told.Tag is not { } tag || tag.Equals(current?.Tag, StringComparison.OrdinalIgnoreCase))
        {
            return current ?? Nothing;
        }

        var found = desk.Find(tag) ?? Nothing with { Tag = tag };
        return current is { Tag: null }
            ? found with
            {
                CylinderKind = current.CylinderKind ?? found.CylinderKind,
                Purpose = current.Purpose,
                Reason = current.Reason,
                Refrigerant = current.Refrigerant ?? found.Refrigerant,
                TareGrams = current.TareGrams ?? found.TareGrams,
                BeforeGrams = current.BeforeGrams ?? found.BeforeGrams,
                AfterGrams = current.AfterGrams,
                AmountGrams = current.AmountGrams,
                LossGrams = current.LossGrams,
                WaterCapacityGrams = current.WaterCapacityGrams ?? found.WaterCapacityGrams,
                IsWeighedHere = current.IsWeighedHere || found.IsWeighedHere,
            }
            : found;
    }

    private static CylinderNoted Nothing { get; } = new() { At = default, By = "" };
}
