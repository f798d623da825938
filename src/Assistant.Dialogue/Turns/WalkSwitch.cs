using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Goes from one walk to another: begins, takes up again, leaves, offers. What is left waits where it stood.</summary>
internal sealed class WalkSwitch(WalkLibrary library)
{
    /// <summary>Begins the walk, or takes it up where it was left.</summary>
    public void Go(TurnDraft draft, string walk)
    {
        var runs = draft.State.Runs;
        if (library.Find(walk) is not { } definition)
        {
            return;
        }

        if (runs.Current is { FinishedBy: null } current && current.Walk == walk)
        {
            Decline(draft);
            draft.Say("walk.here-already", ("walk", definition.Title));
        }
        else if (runs.Open(walk) is not null)
        {
            draft.Emit(new WalkResumed(walk) { At = draft.At, By = draft.By });
            draft.Say("walk.resumed", ("walk", definition.Title));
        }
        else
        {
            draft.Emit(new WalkStarted(walk) { At = draft.At, By = draft.By });
            draft.Say("walk.begun", ("walk", definition.Title));
            Outdate(draft, definition);
        }
    }

    // What was read before the plant was emptied or filled says nothing of it any more.
    private static void Outdate(TurnDraft draft, WalkDefinition walk)
    {
        ImmutableArray<string> read = [.. walk.Outdates.Where(name => draft.State.Facts.Has(FactCatalogue.Find(name)!))];
        if (!read.IsEmpty)
        {
            draft.Emit(new ReadingsOutdated(read) { At = draft.At, By = draft.By });
        }
    }

    /// <summary>Leaves the walk under way for the one left before it; false where there is none.</summary>
    public bool Leave(TurnDraft draft)
    {
        if (draft.State.Runs.Left.FirstOrDefault() is not { } left)
        {
            return false;
        }

        var here = library.Machine(draft.State.Walk).Walk;
        draft.Emit(new WalkResumed(left.Walk) { At = draft.At, By = draft.By });
        draft.Say("walk.left", ("walk", here.Title), ("back", library.Machine(left.Walk).Walk.Title));
        return true;
    }

    /// <summary>The walk offered is not gone now.</summary>
    public static void Decline(TurnDraft draft)
    {
        if (draft.State.Offered is { } offered)
        {
            draft.Emit(new OfferDeclined(offered) { At = draft.At, By = draft.By });
        }
    }

    /// <summary>Finishes the run under way and offers what its end names; the walk left before is under way again.</summary>
    public void Finish(TurnDraft draft, WalkDefinition walk, WalkStop end)
    {
        draft.Emit(new WalkFinished(walk.Name) { At = draft.At, By = draft.By });
        if (end.Says.Length > 0)
        {
            draft.Say(end.Says);
        }

        if (end.Offers is { } next)
        {
            draft.Emit(new WalkOffered(next) { At = draft.At, By = draft.By });
        }
        else if (draft.State.Run is { FinishedBy: null } back)
        {
            draft.Say("walk.resumed", ("walk", library.Machine(back.Walk).Walk.Title));
        }
    }

    /// <summary>The walk that leads through putting a fault right, where it was not gone through since the last fault was put right; otherwise null.</summary>
    public static string? Through(VisitState state, FaultAction action)
    {
        var since = state.Mended.IsEmpty ? 0 : state.Mended[^1].Number;
        return action.Walk is { } walk && (state.Runs.Latest(walk) is not { FinishedBy: not null } run || run.StartedBy < since) && !state.Declined.Exists(d => d.Walk == walk && d.Number > since) ? walk : null;
    }
}
