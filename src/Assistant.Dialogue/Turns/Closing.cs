using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Ends a walk and its visit, with what was put right and what stays open.</summary>
/// <param name="walk">The opening walk, which knows what each fault needs.</param>
internal sealed class Closing(PhraseBook book, WalkDefinition walk)
{
    /// <summary>Closes the visit; what leads and was not put right becomes a follow-up unless one is noted.</summary>
    public void Close(TurnDraft draft, Finding? leader)
    {
        var open = leader is { Code: not FaultCode.NoFault } ? leader : null;
        if (open is not null && draft.State.FollowUps.IsEmpty)
        {
            FollowUp(draft, open);
        }

        Reminders.End(draft);
        draft.Emit(new WalkFinished(walk.Name) { At = draft.At, By = draft.By });
        draft.Emit(new VisitClosed(Outcome(draft.State, open).Full) { At = draft.At, By = draft.By });
        draft.Say("close.done");
        if (draft.State.Cylinders.Current is { IsUse: true, Asks: not null } told)
        {
            // What lacks can not be asked any more: that it lacks is said to whoever can still look.
            draft.Say("close.cylinder-open", ("tag", told.Tag ?? "?"));
        }
    }

    /// <summary>Notes to come back for a fault that cannot be put right today.</summary>
    public void FollowUp(TurnDraft draft, Finding open)
    {
        var (fault, due) = ("fault." + Codes.Of(open.Code), DateOnly.FromDateTime(draft.At.Date).AddDays(walk.Action(open.Code).FollowUpDays));
        draft.Emit(new FollowUpNoted(due, book.Word(fault)) { At = draft.At, By = draft.By });
        draft.Say("close.follow-up", ("date", due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), ("fault", fault));
    }

    private Phrase Outcome(VisitState state, Finding? open)
    {
        if (open is not null)
        {
            return book.Say("close.outcome-open", state.Units, ("fault", "fault." + Codes.Of(open.Code)));
        }

        return state.Mended.IsEmpty
            ? book.Say("close.outcome-nothing", state.Units)
            : book.Say("close.outcome-mended", state.Units, ("faults", string.Join("; ", state.Mended.Select(m => book.Word("fault." + m.Fault)).Distinct())));
    }
}
