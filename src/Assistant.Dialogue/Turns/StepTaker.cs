using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Takes the words that answer a stop without a fact: an option, "done", "skip".</summary>
internal sealed class StepTaker(WalkStand stand, WalkSwitch walks, VerdictTeller verdicts, Closing closing, Assess assess)
{
    /// <summary>Takes an option of the stop that chooses; false where the message names none.</summary>
    /// <param name="isWhole">True to take the whole message only.</param>
    public bool Choose(TurnDraft draft, string plain, Func<string, string> also, bool isWhole)
    {
        var stop = stand.Stop(draft.State);
        if (stop.Choice is not { } choice || (choice.Find(plain, isWhole) ?? choice.Find(also(plain), isWhole: true)) is not { } option)
        {
            return false;
        }

        draft.Emit(new StopChosen(stand.Walk(draft.State).Name, stop.Name, choice.Name, option) { At = draft.At, By = draft.By });
        draft.Say("taken.chosen", ("option", option));
        return true;
    }

    public void Skip(TurnDraft draft)
    {
        var (state, stop) = (draft.State, stand.Stop(draft.State));
        if (state.Questioned.IsEmpty && DisputeSettler.Open(state) is not null)
        {
            draft.Say("command.skip-refused");
            draft.Say("differ.why");
            return;
        }

        if (state.Questioned.Values.MinBy(q => q.Number) is { } questioned)
        {
            draft.Emit(new EventWithdrawn(questioned.Number) { At = draft.At, By = draft.By });
        }
        else if (state.Clarification is { What: "fact" } asked)
        {
            // What was asked back is left out, and not the walk's own question behind it.
            draft.Emit(new EventWithdrawn(asked.Number) { At = draft.At, By = draft.By });
            draft.Say("clarify.dropped");
            return;
        }

        if (state.Offered is not null)
        {
            WalkSwitch.Decline(draft);
            return;
        }

        if (RequestTaker.Skip(draft, stop))
        {
            return;
        }

        if (stop.IsRequired)
        {
            draft.Say("command.skip-refused");
            draft.Say(stop.Why);
            return;
        }

        if (stop.Kind == StopKind.Acts && stand.Leader(state) is { Code: not FaultCode.NoFault } open)
        {
            closing.FollowUp(draft, open);
        }
        else
        {
            draft.Say("command.skipped");
        }

        draft.Emit(new StopSkipped(stand.Walk(state).Name, stop.Name) { At = draft.At, By = draft.By });
    }

    /// <summary>"done": at a step it is confirmed, at a repair the fault is put right; anywhere else a walk begun from another is left, and it is asked whether the visit ends.</summary>
    /// <param name="isOfTheVisit">True where it was said that the visit ends: that confirms no step and puts nothing right.</param>
    public void Done(TurnDraft draft, bool isOfTheVisit)
    {
        var stop = stand.Stop(draft.State);
        if (isOfTheVisit && !stand.IsLast(stop, draft.State))
        {
            Close(draft);
        }
        else if ((stand.InHand(draft.State) ?? UnderRepair(draft.State, stop)) is { } fault && stand.Walk(draft.State).Action(fault).Outdates is { IsEmpty: false } outdates)
        {
            draft.Emit(new FaultMended(Codes.Of(fault), outdates) { At = draft.At, By = draft.By });
            Reopen(draft);
            draft.Say("taken.mended", ("fault", "fault." + Codes.Of(fault)));
        }
        else if (stop.Kind is StopKind.Confirms or StopKind.Acts && IsElsewhere(draft) && (stop.IsRequired || !stop.Hazards.IsEmpty || !stop.Cautions.IsEmpty))
        {
            draft.Say("confirm.on-site-only");
        }
        else if (stop.Kind is StopKind.Confirms or StopKind.Acts)
        {
            draft.Emit(new StopConfirmed(stand.Walk(draft.State).Name, stop.Name) { At = draft.At, By = draft.By });
            draft.Say("taken.confirmed");
        }
        else if (stand.Walk(draft.State) == stand.Library.Opening || !walks.Leave(draft))
        {
            // "done" may be of what was just read: nothing so final is taken from half a word.
            draft.Emit(new CloseQueried { At = draft.At, By = draft.By });
        }
    }

    /// <summary>Ends the visit where the walk is not through, with what led.</summary>
    public void Close(TurnDraft draft)
    {
        var leader = stand.Leader(draft.State);
        draft.Say("close.early");
        if (leader is { Code: not FaultCode.NoFault })
        {
            draft.Say("command.status-leading", ("standing", Codes.Of(leader.Standing)), ("fault", "fault." + Codes.Of(leader.Code)));
            verdicts.TellAll(draft, assess(draft.State.Facts));
        }
        else if (leader is null)
        {
            draft.Say("verdict.nothing");
        }

        closing.Close(draft, leader);
    }

    // The walk asks for readings again while the repair they were lost to is not said to be done: "done" is of the repair first.
    private FaultCode? UnderRepair(VisitState state, WalkStop stop) =>
        stop.Kind is StopKind.Asks or StopKind.Proves && stand.Walk(state) == stand.Library.Opening && FaultInHand.IsUnderRepair(state) ? Codes.FindFault(state.LastVerdict!.Fault) : null;

    // Who helps from afar can not see whether a step is safe.
    private static bool IsElsewhere(TurnDraft draft) => VisitCrew.RoleOf(draft.State, draft.By) != VisitCrew.OnSite;

    // What was left out on the way to one fault is open again for the next.
    private void Reopen(TurnDraft draft)
    {
        foreach (var mark in draft.State.Skipped.Where(m => stand.Walk(draft.State).Find(m.Stop) is { Kind: StopKind.Proves or StopKind.Acts }).ToList())
        {
            draft.Emit(new EventWithdrawn(mark.Number) { At = draft.At, By = draft.By });
        }
    }
}
