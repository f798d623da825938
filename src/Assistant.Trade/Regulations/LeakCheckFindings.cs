using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Regulations;

/// <summary>What Regulation (EU) 2024/573 asks of an appliance on a day: regular checks, detection, the check after a repair.</summary>
public static class LeakCheckFindings
{
    /// <param name="asOf">The day of the question; later events are left out.</param>
    public static ImmutableArray<RegulationFinding> Of(Appliance appliance, IReadOnlyCollection<ServiceEvent> events, LeakCheckRegulation rule, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(appliance);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(rule);
        if (!rule.AppliesTo(appliance, asOf) || FluorinatedCharge.Of(appliance) is not { } charge)
        {
            return [];
        }

        if (appliance.IsHermeticallySealed && !charge.Reaches(rule.Hermetic.ExemptBelowTonnes, rule.Hermetic.ExemptBelowKilogramsHfo))
        {
            return [new(RegulationCode.HermeticExempt, rule, rule.Hermetic.Paragraph, null, Measure(charge))];
        }

        var past = events.Where(e => e.On <= asOf).ToList();
        return
        [
            RegularCheck(appliance, past, charge, rule),
            .. Detection(appliance, charge, rule),
            .. AfterRepair(past, rule),
            .. past.Count == 0 ? [] : (RegulationFinding[])[new(RegulationCode.KeepRecordsUntil, rule, rule.Records.Paragraph, past.Max(e => e.On).AddYears(rule.Records.Years))],
        ];
    }

    /// <summary>The months between two checks of this charge, or null below the first step.</summary>
    public static int? IntervalMonths(FluorinatedCharge charge, bool withDetection, LeakCheckRegulation rule)
    {
        ArgumentNullException.ThrowIfNull(charge);
        ArgumentNullException.ThrowIfNull(rule);
        var step = rule.Steps.LastOrDefault(s => charge.Reaches(s.FromTonnes, s.FromKilogramsHfo));
        return withDetection ? step?.EveryMonthsWithDetection : step?.EveryMonths;
    }

    // Without a check or an installation on record there is no day to count from, and no date is made up.
    private static RegulationFinding RegularCheck(Appliance appliance, List<ServiceEvent> past, FluorinatedCharge charge, LeakCheckRegulation rule)
    {
        var months = IntervalMonths(charge, appliance.HasLeakDetection, rule)!.Value;
        var last = past.OfType<LeakInspected>().Select(i => (DateOnly?)i.On).Max() ?? appliance.InstalledOn;
        return new(last is null ? RegulationCode.LeakCheckUndated : RegulationCode.LeakCheckBy, rule, rule.ChecksParagraph, last?.AddMonths(months), [.. Measure(charge), ("months", Amount.Ratio(months))]);
    }

    private static IEnumerable<RegulationFinding> Detection(Appliance appliance, FluorinatedCharge charge, LeakCheckRegulation rule)
    {
        if (!appliance.HasLeakDetection && charge.Reaches(rule.Detection.CompulsoryFromTonnes, rule.Detection.CompulsoryFromKilogramsHfo))
        {
            yield return new(RegulationCode.LeakDetectionCompulsory, rule, rule.Detection.Paragraph, null, Measure(charge));
        }
    }

    // A check on the day of the repair is not yet after a day of running.
    private static IEnumerable<RegulationFinding> AfterRepair(List<ServiceEvent> past, LeakCheckRegulation rule)
    {
        var repaired = past.OfType<LeakRepaired>().Select(r => (DateOnly?)r.On).Max();
        if (repaired is { } day && !past.OfType<LeakInspected>().Any(i => i.On > day))
        {
            yield return new(
                RegulationCode.CheckAfterRepairBy,
                rule,
                rule.AfterRepair.Paragraph,
                day.AddMonths(rule.AfterRepair.WithinMonths),
                ("hours", Amount.Ratio(rule.AfterRepair.NotBeforeRunningHours)),
                ("on", RegulationFinding.Day(day)));
        }
    }

    private static ImmutableArray<ReasonPart> Measure(FluorinatedCharge charge) =>
        [("charge", new Amount(charge.Kilograms, Dimension.Mass)), ("tonnes", Amount.Ratio(charge.Tonnes))];
}
