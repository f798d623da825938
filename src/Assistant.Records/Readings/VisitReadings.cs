using System.Collections.Immutable;
using Assistant.Dialogue.Visits;

namespace Assistant.Records.Readings;

/// <summary>Every reading of a visit's log in the order it was taken, with what it counts for today.</summary>
public static class VisitReadings
{
    /// <param name="events">The log of one visit, numbered.</param>
    public static ImmutableArray<LoggedReading> Of(IReadOnlyCollection<VisitEvent> events)
    {
        var withdrawals = Withdrawals(events);
        var counting = events.OfType<FactTaken>()
            .Where(e => !withdrawals.ContainsKey(e.Number))
            .GroupBy(e => e.Fact)
            .Select(taken => taken.OrderBy(t => t.At).Last().Number)
            .ToHashSet();
        var disputed = Disputed(events);
        var outdatings = events.Where(e => !withdrawals.ContainsKey(e.Number)).Select(e => (e.At, e.Number, Facts: OutdatedBy(e))).Where(o => !o.Facts.IsEmpty).ToList();
        return
        [
            .. events.SelectMany<VisitEvent, LoggedReading>(happened => happened switch
            {
                FactTaken e when withdrawals.TryGetValue(e.Number, out var by) => [LoggedReading.Of(e, ReadingStanding.Withdrawn, by)],
                FactTaken e when disputed.Contains(e.Number) => [LoggedReading.Of(e, ReadingStanding.Disputed, null)],
                FactTaken e when !counting.Contains(e.Number) => [LoggedReading.Of(e, ReadingStanding.Superseded, null)],
                FactTaken e when outdatings.Exists(o => (o.At, o.Number).CompareTo((e.At, e.Number)) > 0 && o.Facts.Contains(e.Fact)) => [LoggedReading.Of(e, ReadingStanding.Outdated, null)],
                FactTaken e => [LoggedReading.Of(e, ReadingStanding.Counts, null)],
                FactQuestioned e when !IsConfirmed(e, events) => [LoggedReading.Of(e, withdrawals.TryGetValue(e.Number, out var by) ? by : null)],
                _ => [],
            }),
        ];
    }

    private static ImmutableArray<string> OutdatedBy(VisitEvent happened) => happened switch
    {
        FaultMended e => e.Outdates,
        ReadingsOutdated e => e.Facts,
        _ => [],
    };

    /// <summary>The withdrawn events' numbers with the number of the event that took each back.</summary>
    public static ImmutableDictionary<int, int> Withdrawals(IEnumerable<VisitEvent> events)
    {
        var withdrawals = ImmutableDictionary.CreateBuilder<int, int>();
        foreach (var withdrawal in events.OfType<EventWithdrawn>())
        {
            withdrawals[withdrawal.Withdrawn] = withdrawal.Number;
        }

        return withdrawals.ToImmutable();
    }

    // Two people read it differently and nobody has said which counts.
    private static HashSet<int> Disputed(IReadOnlyCollection<VisitEvent> events) => events.Any(e => e is ReadingsDiffer)
        ? [.. VisitState.Fold(events).Disputes.Values.SelectMany(d => new[] { d.One.Number, d.Other.Number })]
        : [];

    /// <summary>A questioned value that was confirmed stands in the log again as taken.</summary>
    private static bool IsConfirmed(FactQuestioned questioned, IEnumerable<VisitEvent> events) => events.OfType<FactTaken>()
        .Any(taken => taken.Number > questioned.Number && taken.Fact == questioned.Fact && taken.Value == questioned.Value && taken.Unit == questioned.Unit && taken.Word == questioned.Word);
}
