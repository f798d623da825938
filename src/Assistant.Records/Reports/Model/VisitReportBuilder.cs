using Assistant.Dialogue.Visits;
using Assistant.Records.Plots;
using Assistant.Records.Readings;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Records.Reports.Model;

/// <summary>Makes the report of a visit from its log. Pure: the same log gives the same report.</summary>
public static class VisitReportBuilder
{
    /// <param name="events">The log, numbered, beginning with <see cref="VisitOpened"/>.</param>
    /// <param name="unit">What people call the equipment, or null.</param>
    /// <param name="pictures">The content of a picture by its id; null where it is not kept.</param>
    public static VisitReport Build(string visitId, IReadOnlyList<VisitEvent> events, string? unit, Func<PictureTaken, ReportedPicture> pictures, ReportBasis basis)
    {
        var opened = events.OfType<VisitOpened>().First();
        var withdrawn = VisitReadings.Withdrawals(events);
        var standing = events.Where(e => !withdrawn.ContainsKey(e.Number)).ToList();
        var closed = standing.OfType<VisitClosed>().LastOrDefault();
        return new(
            visitId,
            opened.Site,
            opened.AssetId,
            unit,
            opened.Units == "metric" ? UnitSystem.Metric : UnitSystem.Us,
            opened.At,
            closed?.At,
            closed?.Outcome,
            standing.OfType<HandedOver>().LastOrDefault() is { To: { Length: > 0 } to } ? to : null,
            [.. events.OfType<MessageHeard>().Select(m => m.By).Prepend(opened.By).Distinct()],
            VisitReadings.Of(events),
            // A verdict taken back after a repair is stored without words: the last one that was said stays in the report.
            [.. standing.OfType<VerdictGiven>().Where(v => v.Text.Length > 0)],
            [.. standing.OfType<FaultMended>()],
            [.. standing.OfType<CautionGiven>()],
            [.. CylinderUsed.Counting(standing.OfType<CylinderUsed>()).DistinctBy(c => c.EntryId)],
            [.. standing.OfType<FollowUpNoted>().Concat(AfterDays(standing, closed)).OrderBy(f => f.Due)],
            [.. standing.OfType<PictureTaken>().Select(pictures)],
            [.. events.OfType<MessageHeard>()],
            PlottedVisit.Of(events),
            basis)
        {
            OpenCylinder = VisitState.Fold(events).Cylinders.Current is { IsUse: true, Asks: not null } told ? told : null,
            Leaks = [.. standing.OfType<LeakFound>()],
            Judgements = [.. standing.OfType<JudgementGiven>()],
            IsSoundSince = standing.OfType<FaultMended>().Any() && Assessor.Assess(VisitState.Fold(events).Facts).Findings[0] is { Code: FaultCode.NoFault, Standing: Standing.Likely or Standing.Established },
        };
    }

    // A reminder of another day outlives the visit: whoever comes next, and the one who pays, has it from here.
    private static IEnumerable<FollowUpNoted> AfterDays(IEnumerable<VisitEvent> standing, VisitClosed? closed) => closed is null ? [] : standing.OfType<ReminderSet>()
        .Where(r => r.Due.Date > closed.At.Date)
        .Select(r => new FollowUpNoted(DateOnly.FromDateTime(r.Due.Date), r.About) { Number = r.Number, At = r.At, By = r.By });
}
