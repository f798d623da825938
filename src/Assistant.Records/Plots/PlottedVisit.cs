using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Records.Plots;

/// <summary>What the plots of a visit are drawn from.</summary>
/// <param name="Facts">What is known; from the last verdict where a repair has outdated the readings of the cycle.</param>
/// <param name="Course">What was read more than once.</param>
/// <param name="Measured">The cycle as it was read, or null.</param>
/// <param name="Designed">The cycle the unit is built for in today's weather, or null.</param>
public sealed record PlottedVisit(FactSet Facts, VisitCourse Course, UnitSystem Units, RefrigerationCycle? Measured, RefrigerationCycle? Designed)
{
    public static PlottedVisit Of(IReadOnlyList<VisitEvent> events)
    {
        var now = VisitState.Fold(events);
        var facts = RefrigerationCycle.Measured(now.Facts) is null ? AtVerdict(events) : now.Facts;
        return new(facts, SinceRepair(VisitCourse.Of(now), now, events), now.Units, RefrigerationCycle.Measured(facts), RefrigerationCycle.Design(facts));
    }

    // Before the repair the room was warm for a reason that is gone: the pull-down is what came after.
    private static VisitCourse SinceRepair(VisitCourse course, VisitState now, IReadOnlyList<VisitEvent> events)
    {
        if (now.Mended.IsEmpty)
        {
            return course;
        }

        var mended = UnitsNet.Duration.FromSeconds((events.First(e => e.Number == now.Mended[^1].Number).At - now.OpenedAt).TotalSeconds);
        var since = course.Box.RemoveAll(r => r.At < mended);
        return since.Length < 2 ? course : course with { Box = since };
    }

    /// <summary>What was known when the last verdict was said: a repair outdates the readings that led to it.</summary>
    private static FactSet AtVerdict(IReadOnlyList<VisitEvent> events)
    {
        var last = events.OfType<VerdictGiven>().LastOrDefault()?.Number ?? events.Count;
        return VisitState.Fold(events.Take(last)).Facts;
    }
}
