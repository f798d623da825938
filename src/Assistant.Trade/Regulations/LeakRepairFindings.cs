using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using UnitsNet;

namespace Assistant.Trade.Regulations;

/// <summary>What a leak repair rule asks of an appliance on a day, from what was done to it.</summary>
public static class LeakRepairFindings
{
    /// <summary>The findings, the most pressing order of work first: rate, repair, tests, plan, inspection, report, records.</summary>
    /// <param name="asOf">The day of the question; later events are left out.</param>
    public static ImmutableArray<RegulationFinding> Of(Appliance appliance, IReadOnlyCollection<ServiceEvent> events, LeakRepairRegulation rule, LeakRateMethod method, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(rule);
        var past = events.Where(e => e.On <= asOf).ToList();
        var rates = LeakRateCourse.Of(appliance, past, rule, method, asOf);
        var state = LeakRepairState.Of(rates, past, asOf);
        return
        [
            .. Rate(rates, rule),
            .. Seasonal(past, rule),
            .. state is null ? [] : Repair(state, appliance, rule, asOf),
            .. state is null ? [] : LeakInspections.Of(state, rates, past, appliance, rule, asOf),
            .. AnnualReports(appliance, past, rule, asOf),
            .. KeepRecords(past, rule),
        ];
    }

    private static IEnumerable<RegulationFinding> Rate(ImmutableArray<LeakRateAt> rates, LeakRepairRegulation rule)
    {
        if (rates.LastOrDefault() is { } last)
        {
            yield return new(
                last.IsOver ? RegulationCode.LeakRateOver : RegulationCode.LeakRateWithin,
                rule,
                rule.LeakRate.Paragraph,
                null,
                ("rate", Share(last.Rate)),
                ("threshold", Share(last.Threshold)),
                ("on", RegulationFinding.Day(last.On)),
                ("added", Weight(last.Added)));
        }
    }

    private static IEnumerable<RegulationFinding> Seasonal(List<ServiceEvent> past, LeakRepairRegulation rule) =>
        SeasonalMoves.Of(past, rule.LeakRate.SeasonalWithinMonths)
            .TakeLast(1)
            .Select(m => new RegulationFinding(
                m.IsProven ? RegulationCode.SeasonalVariance : RegulationCode.SeasonalNotProven,
                rule,
                rule.LeakRate.Paragraph,
                null,
                ("added", Weight(m.Added.Amount)),
                ("held", Weight(m.Held)),
                ("on", RegulationFinding.Day(m.Added.On))));

    private static IEnumerable<RegulationFinding> Repair(LeakRepairState state, Appliance appliance, LeakRepairRegulation rule, DateOnly asOf)
    {
        var shown = state.Exceeded.On;
        var days = appliance.RepairNeedsProcessShutdown ? rule.Repair.WithinDaysWithProcessShutdown : rule.Repair.WithinDays;
        var repairBy = shown.AddDays(days);
        var since = (ReasonPart)("on", RegulationFinding.Day(shown));
        if (state.FollowUpPassed is null)
        {
            if (state.InitialPassed is null)
            {
                yield return new(RegulationCode.RepairBy, rule, rule.Repair.Paragraph, repairBy, since);
                yield return new(RegulationCode.InitialVerificationBy, rule, rule.InitialVerification.Paragraph, repairBy, since);
            }
            else
            {
                var from = state.NormalRunning ?? state.InitialPassed.Value;
                yield return new(RegulationCode.FollowUpVerificationBy, rule, rule.FollowUpVerification.Paragraph, from.AddDays(rule.FollowUpVerification.WithinDays), ("on", RegulationFinding.Day(from)));
            }
        }

        if (PlanFrom(state, repairBy, rule, asOf) is { } failed)
        {
            yield return new(
                RegulationCode.RetrofitOrRetirementPlanBy,
                rule,
                rule.Plan.Paragraph,
                failed.AddDays(rule.Plan.WithinDays),
                ("on", RegulationFinding.Day(failed)),
                ("done", RegulationFinding.Day(failed.AddMonths(rule.Plan.CompletedWithinMonths))));
        }
    }

    // The day on which the repair was shown not to have held: leaking again over the threshold within a year of its proof, a failed
    // follow-up, or the repair date passed without an initial verification.
    private static DateOnly? PlanFrom(LeakRepairState state, DateOnly repairBy, LeakRepairRegulation rule, DateOnly asOf) => state switch
    {
        { ProvenBefore: { } proven } when state.Exceeded.On <= proven.AddMonths(rule.Plan.AgainWithinMonths) => state.Exceeded.On,
        { FollowUpPassed: not null } => null,
        { FollowUpFailed: { } failed } when asOf > repairBy => failed > repairBy ? failed : repairBy,
        { InitialPassed: null } when asOf > repairBy => repairBy,
        _ => null,
    };

    private static IEnumerable<RegulationFinding> AnnualReports(Appliance appliance, List<ServiceEvent> past, LeakRepairRegulation rule, DateOnly asOf) =>
        LeakRateCourse.Counted(past, rule)
            .GroupBy(a => a.On.Year)
            .Where(year => year.Key >= asOf.Year - 1)
            .Select(year => (Year: year.Key, Share: Ratio.FromDecimalFractions(year.Sum(a => a.Added.Kilograms) / appliance.FullCharge.Kilograms)))
            .Where(year => Limits.AtLeast(year.Share.Percent, rule.AnnualReport.FromPercentOfCharge))
            .Select(year => new RegulationFinding(
                RegulationCode.AnnualReportBy,
                rule,
                rule.AnnualReport.Paragraph,
                new DateOnly(year.Year + 1, rule.AnnualReport.DueMonth, rule.AnnualReport.DueDay),
                ("share", Share(year.Share)),
                ("limit", Share(Ratio.FromPercent(rule.AnnualReport.FromPercentOfCharge)))));

    private static IEnumerable<RegulationFinding> KeepRecords(List<ServiceEvent> past, LeakRepairRegulation rule) => past.Count == 0
        ? []
        : [new(RegulationCode.KeepRecordsUntil, rule, rule.Records.Paragraph, past.Max(e => e.On).AddYears(rule.Records.Years))];

    private static Amount Share(Ratio ratio) => Amount.Ratio(ratio.DecimalFractions);

    private static Amount Weight(Mass mass) => new(mass.Kilograms, Dimension.Mass);
}
