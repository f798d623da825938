using System.Collections.Immutable;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>The leak rate of an appliance at each addition that counts, under one rule and by one method.</summary>
public static class LeakRateCourse
{
    private const int UsualSeasonMonths = 12;

    /// <summary>
    /// The rates in order of time. Additions of one day are one addition. The charge of a new installation, of a retrofit and a
    /// proven seasonal variance are not reckoned, but are days on which refrigerant was added.
    /// </summary>
    /// <param name="asOf">What happened later is left out.</param>
    public static ImmutableArray<LeakRateAt> Of(Appliance appliance, IEnumerable<ServiceEvent> events, LeakRepairRegulation rule, LeakRateMethod method, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        ArgumentNullException.ThrowIfNull(rule);
        var threshold = rule.LeakRate.OverPercent.For(appliance.Use);
        return [.. Reckoned(appliance.FullCharge, events, rule.LeakRate, method, asOf).Select(r => new LeakRateAt(r.On, r.Added, r.DaysSinceLastAddition, r.Rate, threshold))];
    }

    /// <summary>The same without a threshold, each rate with what it was reckoned from.</summary>
    /// <param name="terms">Null where no rule applies: every addition counts then, and a seasonal variance is one within twelve months (40 CFR 82.152).</param>
    /// <param name="asOf">What happened later is left out.</param>
    public static ImmutableArray<ReckonedLeakRate> Reckoned(Mass fullCharge, IEnumerable<ServiceEvent> events, LeakRateTerms? terms, LeakRateMethod method, DateOnly asOf)
    {
        var past = events.Where(e => e.On <= asOf).ToList();
        var from = terms?.AdditionsCountFrom ?? DateOnly.MinValue;
        var daysOfAddition = past.OfType<RefrigerantAdded>().Where(a => a.On >= from).Select(a => a.On).Distinct().Order().ToList();
        var counted = Counted(past, terms);
        var proofs = past.OfType<VerificationTested>().Where(t => t is { Test: VerificationTest.FollowUp, Passed: true }).Select(t => t.On).Order().ToList();
        return
        [
            .. counted.Select(addition =>
            {
                var days = DaysSince(daysOfAddition, addition.On);
                var proven = LastBefore(proofs, addition.On) is { } proof && proof > addition.On.AddDays(-AnnualLeakRate.Year) ? proof : (DateOnly?)null;
                var rate = method == LeakRateMethod.Annualising
                    ? AnnualLeakRate.Annualising(addition.Added, fullCharge, days)
                    : AnnualLeakRate.Rolling(counted, fullCharge, addition.On, proven);
                return new ReckonedLeakRate(addition.On, addition.Added, days, AnnualLeakRate.Within(counted, addition.On, proven), proven, rate);
            }),
        ];
    }

    /// <summary>What counts as leaked, summed by the day, in order of time.</summary>
    public static ImmutableArray<RefrigerantAddition> Counted(IEnumerable<ServiceEvent> events, LeakRepairRegulation rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return Counted(events, rule.LeakRate);
    }

    private static ImmutableArray<RefrigerantAddition> Counted(IEnumerable<ServiceEvent> events, LeakRateTerms? terms)
    {
        var all = events.ToList();
        var seasonal = SeasonalMoves.Of(all, terms?.SeasonalWithinMonths ?? UsualSeasonMonths).Where(m => !m.IsProven).Select(m => m.Added);
        return
        [
            .. all.OfType<RefrigerantAdded>()
                .Where(a => a.Reason == AdditionReason.TopUp)
                .Concat(seasonal)
                .Where(a => a.On >= (terms?.AdditionsCountFrom ?? DateOnly.MinValue) && a.Amount > Mass.Zero)
                .GroupBy(a => a.On)
                .OrderBy(g => g.Key)
                .Select(g => new RefrigerantAddition(g.Key, Mass.FromKilograms(g.Sum(a => a.Amount.Kilograms)))),
        ];
    }

    // The first addition under a rule counts as a whole year.
    private static int DaysSince(List<DateOnly> days, DateOnly day) =>
        days.LastOrDefault(d => d < day) is var last && last == default ? AnnualLeakRate.Year : day.DayNumber - last.DayNumber;

    private static DateOnly? LastBefore(List<DateOnly> proofs, DateOnly day) =>
        proofs.LastOrDefault(p => p < day) is var last && last == default ? null : last;
}

/// <summary>A leak rate with what it was reckoned from.</summary>
/// <param name="DaysSinceLastAddition">365 for the first addition that counts; may be more than 365, which the method cuts.</param>
/// <param name="AddedWithin">All that was added within 365 days up to that day, or since the repair was proven.</param>
/// <param name="ProvenOn">The day within those 365 on which the last repair was proven, or null.</param>
public sealed record ReckonedLeakRate(DateOnly On, Mass Added, int DaysSinceLastAddition, Mass AddedWithin, DateOnly? ProvenOn, Ratio Rate);

/// <summary>A leak rate on the day of the addition that set it.</summary>
/// <param name="DaysSinceLastAddition">365 for the first addition under the rule; may be more than 365, which the method cuts.</param>
public sealed record LeakRateAt(DateOnly On, Mass Added, int DaysSinceLastAddition, Ratio Rate, Ratio Threshold)
{
    /// <summary>True above the threshold, not at it.</summary>
    public bool IsOver => Limits.Over(Rate.DecimalFractions, Threshold.DecimalFractions);
}
