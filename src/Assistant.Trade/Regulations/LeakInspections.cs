namespace Assistant.Trade.Regulations;

/// <summary>The leak inspections after a rate over the threshold: quarterly for large refrigeration, else once a calendar year.</summary>
internal static class LeakInspections
{
    /// <summary>
    /// The next inspection, or nothing once the rate stayed at or under the threshold long enough. The quarters count from the
    /// last inspection, before the first one from the repair's proof, or from the addition that showed the leak while there is none.
    /// A leak that comes back while inspections run does not put the next one off.
    /// </summary>
    public static IEnumerable<RegulationFinding> Of(LeakRepairState state, IEnumerable<LeakRateAt> rates, IEnumerable<ServiceEvent> events, Appliance appliance, LeakRepairRegulation rule, DateOnly asOf)
    {
        var terms = rule.Inspections;
        var within = state.FollowUpPassed ?? rates.Where(r => r.IsOver).Max(r => r.On);
        var until = within.AddMonths(terms.UntilMonthsBelow);
        if (asOf > until)
        {
            yield break;
        }

        var stillRunning = state.ProvenBefore is { } proven && state.Exceeded.On <= proven.AddMonths(terms.UntilMonthsBelow);
        var start = stillRunning ? state.ProvenBefore!.Value : state.FollowUpPassed ?? state.Exceeded.On;
        var inspected = events.OfType<LeakInspected>().Where(i => i.On > start).Select(i => (DateOnly?)i.On).Max();
        var ends = ("until", RegulationFinding.Day(until));
        if (terms.QuarterlyUses.Contains(appliance.Use) && Limits.AtLeast(appliance.FullCharge.Pounds, terms.QuarterlyFromPounds))
        {
            yield return new(RegulationCode.InspectQuarterlyBy, rule, terms.Paragraph, (inspected ?? start).AddMonths(3), ends);
        }
        else
        {
            yield return new(RegulationCode.InspectYearlyBy, rule, terms.Paragraph, new DateOnly(inspected is { } last ? last.Year + 1 : start.Year, 12, 31), ends);
        }
    }
}
