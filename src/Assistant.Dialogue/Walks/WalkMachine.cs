using System.Collections.Concurrent;
using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using Stateless;
using Stateless.Graph;

namespace Assistant.Dialogue.Walks;

/// <summary>
/// The state machine of a walk: its stops are the states, its places the states around them. Where a walk stands is found
/// by going from the first stop as far as the facts, the confirmed and the skipped stops allow: so a reading volunteered
/// early fills its stop, and taking one back leads back, with no position to repair.
/// </summary>
public sealed class WalkMachine
{
    private readonly WalkDefinition walk;
    private readonly ConcurrentBag<Cursor> idle = [];

    public WalkMachine(WalkDefinition walk) => this.walk = walk;

    public WalkDefinition Walk => walk;

    /// <summary>Where the walk stands, and the ways it took from where it stood before.</summary>
    public WalkOutcome Locate(WalkView view)
    {
        var cursor = Rent();
        try
        {
            cursor.State = walk.First.Name;
            var (taken, passed, isNew) = (ImmutableArray.CreateBuilder<WalkBranch>(), ImmutableArray.CreateBuilder<WalkStop>(), false);
            string? place = null;
            WalkBranch? back = null;

            // Each stop is passed at most once: the walk is checked to have no way back but those that begin a new passage.
            for (var steps = 0; steps <= walk.Stops.Length; steps++)
            {
                var stop = walk.Stop(cursor.State);
                place = stop.Place ?? place;
                if (stop.Kind == StopKind.Ends)
                {
                    break;
                }

                var branch = TakenBranch(stop, view);
                if (branch is { IsBack: true } && cursor.LeadsBack(view))
                {
                    back = branch;
                    break;
                }

                if (!cursor.Leave(view))
                {
                    if (cursor.Act(view))
                    {
                        continue;
                    }

                    break;
                }

                passed.Add(stop);
                isNew |= stop.Name == view.Run.Stop;
                if (isNew && branch is not null)
                {
                    taken.Add(branch);
                }
            }

            return new(walk.Stop(cursor.State), place ?? walk.Places[0], taken.ToImmutable(), passed.ToImmutable(), back);
        }
        finally
        {
            idle.Add(cursor);
        }
    }

    /// <summary>Why the walk does not go on from a stop, in the words of its guards; empty where it does.</summary>
    public ImmutableArray<string> WhyNot(string stop, WalkView view)
    {
        var cursor = Rent();
        try
        {
            cursor.State = stop;
            return cursor.WhyNot(view);
        }
        finally
        {
            idle.Add(cursor);
        }
    }

    /// <summary>The walk drawn as a Mermaid state diagram.</summary>
    public string Draw() => MermaidGraph.Format(new Cursor(walk).Machine.GetInfo(), MermaidGraphDirection.TopToBottom).ReplaceLineEndings("\n").TrimEnd() + "\n";

    private Cursor Rent() => idle.TryTake(out var free) ? free : new(walk);

    private static bool IsDone(WalkStop stop, WalkView view) =>
        view.Run.IsSkipped(stop.Name) || stop.Kind switch
        {
            StopKind.Asks => stop.Until?.Holds(view) ?? (stop.Repeats ? view.Newest(stop) > 0 : view.Facts.Has(stop.Asks!)),
            StopKind.Confirms => view.Run.IsConfirmed(stop.Name) || (stop.Until?.Holds(view) ?? false),
            StopKind.Chooses => view.Run.Chosen(stop.Name) is not null || (stop.Until?.Holds(view) ?? false),
            StopKind.Judges => view.Outcome(stop) is { } outcome && !stop.Judgement!.Again.Contains(outcome),
            StopKind.Proves => Nothing(view),
            StopKind.Acts => view.Run.IsConfirmed(stop.Name),
            _ => false,
        };

    // A repair after which all is as it should be is proved by the room, not by further readings.
    private static bool Nothing(WalkView view) =>
        view.Leader is { Standing: Standing.Established } || view.IsRightlyResting || view.Assessment.Next is null || view.WasSkipped(view.Assessment.Next)
        || (view.Leader is { Code: FaultCode.NoFault } && view.Facts.Is(FactCatalogue.PullingDown, "yes"));

    private static WalkBranch? TakenBranch(WalkStop stop, WalkView view)
    {
        foreach (var branch in stop.Next)
        {
            if (branch.When?.Holds(view) ?? true)
            {
                return branch;
            }
        }

        return null;
    }

    private enum Trigger
    {
        /// <summary>The stop has what it wants.</summary>
        Next,

        /// <summary>A fault is established: the asking ends.</summary>
        Established,

        /// <summary>An earlier stop and all after it are passed anew.</summary>
        Back,
    }

    /// <summary>One state machine with the stop it stands at; rented for the length of a look.</summary>
    private sealed class Cursor
    {
        private readonly StateMachine<string, Trigger>.TriggerWithParameters<WalkView> next;
        private readonly StateMachine<string, Trigger>.TriggerWithParameters<WalkView> established;
        private readonly StateMachine<string, Trigger>.TriggerWithParameters<WalkView> back;

        public Cursor(WalkDefinition walk)
        {
            State = walk.First.Name;
            Machine = new(() => State, state => State = state);
            next = Machine.SetTriggerParameters<WalkView>(Trigger.Next);
            established = Machine.SetTriggerParameters<WalkView>(Trigger.Established);
            back = Machine.SetTriggerParameters<WalkView>(Trigger.Back);
            // A trigger no guard lets through leaves the machine where it is: that is the answer, not a mistake.
            Machine.OnUnhandledTrigger((_, _) => { });
            Configure(walk);
        }

        public StateMachine<string, Trigger> Machine { get; }

        public string State { get; set; }

        /// <summary>Goes on where the stop has what it wants; false where it stays.</summary>
        public bool Leave(WalkView view) => Moves(next, view);

        /// <summary>Goes to the stop that acts where a fault is established; false where it stays.</summary>
        public bool Act(WalkView view) => Moves(established, view);

        /// <summary>True where the way from the stop leads back; who leads the walk passes the stops anew.</summary>
        public bool LeadsBack(WalkView view) => Machine.CanFire(back, view);

        private bool Moves(StateMachine<string, Trigger>.TriggerWithParameters<WalkView> trigger, WalkView view)
        {
            var before = State;
            Machine.Fire(trigger, view);
            return !ReferenceEquals(State, before);
        }

        public ImmutableArray<string> WhyNot(WalkView view) =>
            Machine.CanFire(next, view, out var unmet) ? [] : [.. unmet.Distinct()];

        private void Configure(WalkDefinition walk)
        {
            foreach (var place in walk.ActsAt is null ? [] : walk.Places)
            {
                Machine.Configure(place).PermitIf(
                    established,
                    walk.ActsAt!,
                    view => (view.Leader is { Standing: Standing.Established } leader ? leader.Code : view.UnderRepair) is { } fault && !walk.OwnBranch.Contains(fault),
                    "a fault is established");
            }

            foreach (var stop in walk.Stops)
            {
                var state = Machine.Configure(stop.Name);
                if (stop.Place is { } place)
                {
                    state.SubstateOf(place);
                }

                for (var i = 0; i < stop.Next.Length; i++)
                {
                    var branch = stop.Next[i];
                    var done = Guard(view => IsDone(stop, view), Wanted(stop));
                    if (stop.Next.Length == 1)
                    {
                        state.PermitIf(next, branch.Go, done);
                    }
                    else if (branch.Go == stop.Name)
                    {
                        state.PermitReentryIf(back, done, Guard(view => ReferenceEquals(TakenBranch(stop, view), branch), branch.When?.ToString() ?? "otherwise"));
                    }
                    else
                    {
                        state.PermitIf(branch.IsBack ? back : next, branch.Go, done, Guard(view => ReferenceEquals(TakenBranch(stop, view), branch), branch.When?.ToString() ?? "otherwise"));
                    }
                }
            }
        }

        private static Tuple<Func<WalkView, bool>, string> Guard(Func<WalkView, bool> holds, string description) => new(holds, description);

        private static string Wanted(WalkStop stop)
        {
            var wanted = stop.Kind switch
            {
                StopKind.Asks => stop.Until?.ToString() ?? $"{stop.Asks} is known",
                StopKind.Chooses => stop.Until is null ? "chosen" : $"chosen or {stop.Until}",
                StopKind.Judges => stop.Asks is null ? "judged" : $"{stop.Asks} is read and judged",
                StopKind.Proves => "nothing more can be told",
                _ => stop.Until is null ? "confirmed" : $"confirmed or {stop.Until}",
            };
            return stop.IsRequired ? wanted : wanted + " or left out";
        }
    }
}

/// <summary>Where a walk stands.</summary>
/// <param name="Place">Where the technician has to be there.</param>
/// <param name="Taken">The ways taken since the walk stood where the visit last was.</param>
/// <param name="Passed">The stops on the way here.</param>
/// <param name="Back">The way that leads back from here to an earlier stop, or null.</param>
public sealed record WalkOutcome(WalkStop Stop, string Place, ImmutableArray<WalkBranch> Taken, ImmutableArray<WalkStop> Passed, WalkBranch? Back);
