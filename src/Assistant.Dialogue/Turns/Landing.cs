using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// Brings into the visit what was said from behind: sent before its speaker could see where the visit stands by now. What it says is
/// settled by what the speaker had in view, and does not depend on the order in which messages come in; where it leads is settled now.
/// </summary>
internal sealed class Landing(PhraseBook book, WalkGuide guide)
{
    /// <summary>What is said again of what the message did at the time it was sent.</summary>
    private static readonly string[] Repeated = ["leak.", "question.", "clarify.", "unknown.part", "command.undone", "command.handed-over", "crew.", "differ.settled", "request.", "close.follow-up", "taken.confirmed", "taken.mended", "taken.chosen", "command.skipped"];

    /// <param name="take">Takes the message on a state.</param>
    public Turn Land(VisitState state, VisitState seen, InboundMessage message, Func<VisitState, Turn> take)
    {
        var then = take(seen);
        var said = then.Events.Where(e => Says(e, then.Events, seen)).ToList();
        if (said.Count == 0)
        {
            // "why", a question, an emergency: they are for now. A word that acts on what is asked is not turned on another question.
            var now = take(state);
            return now.Events.Any(e => e is CloseQueried || Says(e, now.Events, state)) || (now.After.Outcome is not null && state.Outcome is null) ? Unclear(state, message) : now;
        }

        var draft = Begin(state, message);
        if (state.IsPaused)
        {
            draft.Emit(new VisitResumed { At = draft.At, By = draft.By });
        }

        foreach (var happened in said)
        {
            Land(draft, happened, seen);
        }

        foreach (var part in then.Reply.Parts.Where(p => Array.Exists(Repeated, r => p.Key.StartsWith(r, StringComparison.Ordinal))))
        {
            draft.Say(part);
        }

        if (state.Outcome is not null)
        {
            draft.Say("late.closed");
        }

        return guide.Finish(draft, null);
    }

    private TurnDraft Begin(VisitState state, InboundMessage message)
    {
        var draft = new TurnDraft(book, state, message.Person, message.At);
        draft.Emit(new MessageHeard(message.MessageId, message.Channel, message.Text) { At = message.At, By = message.Person });
        CrewCommands.Return(draft);
        RequestTaker.Tell(draft);
        return draft;
    }

    private Turn Unclear(VisitState state, InboundMessage message)
    {
        var draft = Begin(state, message);
        draft.Say("late.unclear");
        return guide.Finish(draft, null);
    }

    // What the message itself says, as against what follows from it for the walk, the verdict and the cautions.
    private static bool Says(VisitEvent happened, IEnumerable<VisitEvent> all, VisitState before) => happened switch
    {
        FactTaken or FactQuestioned or ClarificationAsked or StopConfirmed or StopSkipped or StopChosen or FaultMended or LeakFound or HandedOver or WatchBegan or WatchEnded or PersonLeft or LeaveQueried or ReadingRequested or RequestDropped => true,
        EventWithdrawn e => e.Withdrawn <= before.Version,
        FollowUpNoted => !all.Any(e => e is VisitClosed),
        _ => false,
    };

    private void Land(TurnDraft draft, VisitEvent happened, VisitState seen)
    {
        var state = draft.State;
        switch (happened)
        {
            case FactTaken e when FactCatalogue.Find(e.Fact) is { } fact:
                var before = state.Facts.Find(fact);
                draft.Emit(e);
                Acknowledgement.Say(draft, fact, before, e.Stop is { } stop && guide.Stand.Walk(seen).Find(stop) is { Repeats: true } at && at.Asks == fact);
                break;
            case EventWithdrawn e when state.Withdrawn.Contains(e.Withdrawn):
                break;

            // Another said which of two counts before: the one that counts now stays.
            case EventWithdrawn e when IsDisputed(seen, e.Withdrawn) && !IsDisputed(state, e.Withdrawn):
                draft.Say("late.settled");
                break;
            case FaultMended e when state.Mended.Exists(m => m.Number > seen.Version && m.Fault == e.Fault):
                draft.Say("late.settled");
                break;
            default:
                draft.Emit(happened);
                break;
        }
    }

    private static bool IsDisputed(VisitState state, int number) => state.Disputes.Values.Any(d => d.One.Number == number || d.Other.Number == number);
}
