using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>What the events of the walks do to the state.</summary>
internal static class WalkFold
{
    /// <param name="state">With the event's own number as its version.</param>
    public static VisitState Apply(VisitState state, VisitEvent happened, int number) => happened switch
    {
        WalkStarted e => Undoable(state with { Runs = state.Runs.Begin(e.Walk, number), Offers = Settled(state, number), Clarification = null }, number),
        WalkResumed e => Undoable(state with { Runs = state.Runs.Enter(e.Walk, number), Offers = Settled(state, number), Clarification = null }, number),
        WalkFinished e => Undoable(Change(state, e.Walk, number, run => run with { FinishedBy = number }), number),
        WalkOffered e => Undoable(state with { Offers = state.Offers.Add((number, e.Walk)) }, number),
        OfferDeclined e => Undoable(state with { Offers = Settled(state, number), Declined = state.Declined.Add((number, e.Walk)), Clarification = null }, number),
        StopReached e => Mark(state, e.Walk, e.Stop, StopMarkKind.Reached, null, number, run => run with { Stop = e.Stop, About = e.About }) with { Place = e.Place },
        StopSkipped e => Undoable(Mark(state, e.Walk, e.Stop, StopMarkKind.Skipped, null, number) with { Clarification = null }, number),
        StopConfirmed e => Undoable(Mark(state, e.Walk, e.Stop, StopMarkKind.Confirmed, null, number) with { Clarification = null }, number),
        StopChosen e => Undoable(Mark(state, e.Walk, e.Stop, StopMarkKind.Chosen, e.Option, number) with
        {
            Clarification = null,
            Choices = state.Choices.Add((number, e.Choice, e.Option)),
        }, number),
        JudgementGiven e => Undoable(Mark(state, e.Walk, e.Stop, StopMarkKind.Judged, e.Outcome, number), number),
        StopsReopened e => Undoable(e.Stops.Aggregate(state, (next, stop) => Mark(next, e.Walk, stop, StopMarkKind.Reopened, null, number)), number),
        _ => state,
    };

    private static ImmutableList<(int Number, string? Walk)> Settled(VisitState state, int number) =>
        state.Offered is null ? state.Offers : state.Offers.Add((number, null));

    private static VisitState Mark(VisitState state, string walk, string stop, StopMarkKind kind, string? word, int number, Func<WalkRun, WalkRun>? also = null) =>
        Change(state, walk, number, run => (also?.Invoke(run) ?? run).With(new(number, stop, kind, word, Math.Max(state.LastMessage, run.ReopenedBy(stop)))));

    private static VisitState Change(VisitState state, string walk, int number, Func<WalkRun, WalkRun> change) =>
        state with { Runs = state.Runs.Change(walk, number, change) };

    private static VisitState Undoable(VisitState state, int number) => VisitFold.Undoable(state, number);
}
