using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Where a visit stands in its walks, looked at without changing anything.</summary>
internal sealed class WalkStand(WalkLibrary library, Assess assess)
{
    public WalkLibrary Library => library;

    public WalkDefinition Walk(VisitState state) => library.Machine(state.Walk).Walk;

    /// <summary>The stop the visit stands at; the first of its walk before any was reached.</summary>
    public WalkStop Stop(VisitState state) => Walk(state).Find(state.Stop ?? "") ?? Walk(state).First;

    public WalkView View(VisitState state, DateTimeOffset now) => new(Walk(state), state, assess(state.Facts), now);

    /// <summary>True where the stop waits for a word and not for a fact.</summary>
    public bool IsAtStep(VisitState state) => Stop(state).Kind is StopKind.Confirms or StopKind.Acts;

    /// <summary>True where the stop waits for the place of a leak, which any words can name.</summary>
    public bool WantsPlaceOfLeak(VisitState state) => Stop(state) is { Kind: StopKind.Confirms, Until: WasLeakFound };

    /// <summary>True where the stop waits until a fault is put right.</summary>
    public bool IsAtRepair(VisitState state) => InHand(state) is { } fault && !Walk(state).Action(fault).Outdates.IsEmpty;

    /// <summary>True where the visit ends with the word that the stop waits for.</summary>
    public bool IsLast(WalkStop stop, VisitState state) =>
        stop.Kind == StopKind.Confirms && stop.Next is [.., { IsBack: false } on] && Walk(state).Find(on.Go) is { Kind: StopKind.Ends, Closes: true };

    /// <summary>The fault that is being put right where the visit stands, or null.</summary>
    public FaultCode? InHand(VisitState state) => FaultInHand.At(state, Stop(state), Leader(state));

    /// <summary>The fact that is asked once the step the visit stands at is confirmed, or null: "31" at "tell me when you are there" answers ahead.</summary>
    public Fact? NextFact(VisitState state)
    {
        var stop = Stop(state);
        if (stop.Kind != StopKind.Confirms)
        {
            return null;
        }

        // "140 psig" at "say ok when you want to read it again" is that reading.
        if (stop.Until is WasRead awaited)
        {
            return awaited.Fact;
        }

        while (stop.Kind == StopKind.Confirms || (stop is { Kind: StopKind.Asks, Repeats: false } && state.Facts.Has(stop.Asks!)))
        {
            if (stop.Next[^1].IsBack)
            {
                return null;
            }

            stop = Walk(state).Stop(stop.Next[^1].Go);
        }

        return stop.Asks;
    }

    public Finding? Leader(VisitState state) => View(state, default).Leader;

    /// <summary>The walk that can be gone instead of the bare repair the visit stands at, or null.</summary>
    public string? Through(VisitState state) =>
        InHand(state) is { } fault ? WalkSwitch.Through(state, Walk(state).Action(fault)) : null;

    /// <summary>The title of the walk under way, then of those left for it.</summary>
    public IReadOnlyList<string> Titles(VisitState state) =>
        [Walk(state).Title, .. state.Runs.Left.Select(r => library.Machine(r.Walk).Walk.Title)];
}
