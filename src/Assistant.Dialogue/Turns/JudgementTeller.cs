using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>Says what the judgements on the way came to, each once for each reading.</summary>
internal sealed class JudgementTeller(PhraseBook book, CautionGiver cautions)
{
    /// <summary>Says what is new at the stops passed and at the one stood at; returns the view after it.</summary>
    public WalkView Tell(TurnDraft draft, WalkOutcome here, WalkView view)
    {
        foreach (var stop in here.Passed.Add(here.Stop))
        {
            if (stop.Repeats && view.Run.Reached(stop.Name) is null && !ReferenceEquals(stop, here.Stop))
            {
                // Passed in one go: from here on it counts as reached with this message.
                draft.Emit(new StopReached(view.Walk.Name, stop.Name, stop.Place ?? here.Place) { At = draft.At, By = draft.By, About = stop.Asks?.Name });
                view = view with { Visit = draft.State };
            }

            if (stop.Judgement is not null && view.IsNews(stop))
            {
                Tell(draft, stop, view, stop.Place ?? here.Place);
                view = view with { Visit = draft.State };
            }
        }

        return view;
    }

    private void Tell(TurnDraft draft, WalkStop stop, WalkView view, string place)
    {
        var (judgement, judged, units) = (stop.Judgement!.Judgement, view.Judge(stop), draft.State.Units);
        var text = book.Say(judgement.Phrase(judged.Outcome), units, judged.Parts.AsSpan());
        var because = judged.Because.Select(r => book.Say(r, units)).ToImmutableArray();
        draft.Say(text);
        draft.Emit(new JudgementGiven(view.Walk.Name, stop.Name, judgement.Name, judged.Outcome, text.Full, [.. because.Select(b => b.Full)]) { At = draft.At, By = draft.By });
        foreach (var reason in because)
        {
            draft.AddReason(reason);
        }

        foreach (var caution in judged.Cautions)
        {
            cautions.Now(draft, caution, place);
        }

        var about = book.Say("remind.stop", units, ("stop", book.Word(stop.Asks?.Name ?? view.Walk.Title))).Full;
        DropPending(draft, about);
        if (judged.Remind is { } remind)
        {
            draft.Emit(new ReminderSet(draft.At + remind, about) { At = draft.At, By = draft.By });
            draft.Say("walk.remind", ("time", new Amount(remind.TotalSeconds, Dimension.Time)));
        }
    }
    // What was to be read again has been read: the reminder of it has nothing left to say.
    private static void DropPending(TurnDraft draft, string about)
    {
        foreach (var pending in draft.State.Reminders.Where(r => r.Due > draft.At && r.About == about))
        {
            draft.Emit(new EventWithdrawn(pending.Number) { At = draft.At, By = draft.By });
        }
    }
}
