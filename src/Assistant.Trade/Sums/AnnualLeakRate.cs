using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>Refrigerant put in on a day.</summary>
public readonly record struct RefrigerantAddition(DateOnly On, Mass Added);

/// <summary>The share of its full charge that a system loses in a year, by the two methods of 40 CFR 82.152.</summary>
public static class AnnualLeakRate
{
    /// <summary>The days of the formulas' year.</summary>
    public const int Year = 365;

    /// <summary>(added / full charge) * (365 / the shorter of the days since the last addition and 365). Source: 40 CFR 82.152, annualizing method.</summary>
    /// <param name="daysSinceLastAddition">At least 1.</param>
    public static Ratio Annualising(Mass added, Mass fullCharge, int daysSinceLastAddition)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(fullCharge.Kilograms, nameof(fullCharge));
        ArgumentOutOfRangeException.ThrowIfLessThan(daysSinceLastAddition, 1);
        return Ratio.FromDecimalFractions(added / fullCharge * Year / Math.Min(daysSinceLastAddition, Year));
    }

    /// <summary>
    /// What was added within the last 365 days, or since the last proven repair where that is shorter, over the full charge.
    /// Source: 40 CFR 82.152, rolling average method.
    /// </summary>
    /// <param name="today">The day of reckoning, itself within the window.</param>
    /// <param name="lastProvenRepair">The day all leaks were last shown to be mended (follow-up verification), or null; additions after it count.</param>
    public static Ratio Rolling(IEnumerable<RefrigerantAddition> additions, Mass fullCharge, DateOnly today, DateOnly? lastProvenRepair)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(fullCharge.Kilograms, nameof(fullCharge));
        return Ratio.FromDecimalFractions(Within(additions, today, lastProvenRepair) / fullCharge);
    }

    /// <summary>What the rolling average sums: all that was added within the last 365 days, or after the last proven repair where that is later.</summary>
    public static Mass Within(IEnumerable<RefrigerantAddition> additions, DateOnly today, DateOnly? lastProvenRepair)
    {
        var yearAgo = today.AddDays(-Year);
        var since = lastProvenRepair is { } repaired && repaired > yearAgo ? repaired : yearAgo;
        return Mass.FromKilograms(additions.Where(a => a.On > since && a.On <= today).Sum(a => a.Added.Kilograms));
    }
}
