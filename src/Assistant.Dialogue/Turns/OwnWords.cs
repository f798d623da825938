using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Turns;

/// <summary>What the dialogue itself listens for before anything is understood: the end of a pause, yes and no to its own questions, "ok" at a step.</summary>
internal sealed class OwnWords(PhraseBook book, ShortWords words, Understand understand, FactTaker taker, Commands commands, WalkGuide guide)
{
    private readonly DisputeSettler disputes = new(words, understand, guide);

    /// <summary>The turn where the message is one of these words, otherwise null.</summary>
    /// <param name="plain">The message in small letters, without punctuation.</param>
    public Turn? Take(TurnDraft draft, string text, string plain) =>
        (draft.State.IsPaused ? Paused(draft, text) : null) ?? Close(draft, plain) ?? Pending(draft, plain) ?? disputes.Take(draft, book, text, plain) ?? Offer(draft, plain) ?? Choose(draft, plain, isWhole: true) ?? Step(draft, plain);

    // A pause ends with the next thing said, but for an emergency: that waits until it is told to go on.
    private Turn? Paused(TurnDraft draft, string text)
    {
        var understood = understand(text, new(null, draft.State.Units));
        if (understood is { Intent: Intent.Command, Command: "resume" or "pause" or "handover" or "report" or "status" or "who" or "watch" or "unwatch" or "leave" })
        {
            return commands.Obey(draft, understood.Command, text);
        }

        if (draft.State.IsEmergency)
        {
            draft.Say("emergency.after");
            return guide.Finish(draft, null);
        }

        draft.Emit(new VisitResumed { At = draft.At, By = draft.By });
        return null;
    }

    // A yes, or "done" once more, to whether the visit is to be closed; null where the message is something else.
    private Turn? Close(TurnDraft draft, string plain)
    {
        if (!draft.Opening.IsCloseAsked || !(words.IsYes(plain) || words.IsConfirm(plain) || words.IsMended(plain) || words.IsNo(plain) || words.IsLater(plain)))
        {
            return null;
        }

        if (words.IsNo(plain) || words.IsLater(plain))
        {
            draft.Say("close.not");
        }
        else
        {
            guide.Steps.Close(draft);
        }

        return guide.Finish(draft, null);
    }

    // A yes or no to a questioned value; null where the message is something else.
    private Turn? Pending(TurnDraft draft, string plain)
    {
        if (draft.State.Questioned.Values.MinBy(q => q.Number) is not { } questioned)
        {
            return draft.State.Clarification is { What: "fact" } open && (words.IsNo(plain) || words.IsLater(plain)) ? Drop(draft, open) : null;
        }

        if (words.IsYes(plain))
        {
            return guide.Finish(draft, taker.Confirm(draft, questioned));
        }

        if (words.IsNo(plain))
        {
            draft.Emit(new EventWithdrawn(questioned.Number) { At = draft.At, By = draft.By });
            draft.Say("question.dropped");
            return guide.Finish(draft, null);
        }

        return null;
    }

    // What was asked back is of no matter after all.
    private Turn Drop(TurnDraft draft, OpenClarification open)
    {
        draft.Emit(new EventWithdrawn(open.Number) { At = draft.At, By = draft.By });
        draft.Say("clarify.dropped");
        return guide.Finish(draft, null);
    }

    // A yes, or an "ok", to the walk that is offered begins it, a no or "later" leaves it; null where the message is something else.
    private Turn? Offer(TurnDraft draft, string plain)
    {
        var offered = draft.State.Offered ?? guide.Stand.Through(draft.State);
        if (offered is not null && (words.IsYes(plain) || (words.IsConfirm(plain) && !words.IsMended(plain))))
        {
            guide.Switch.Go(draft, offered);
            return guide.Finish(draft, null);
        }

        if (draft.State.Offered is not null && (words.IsNo(plain) || words.IsLater(plain)))
        {
            WalkSwitch.Decline(draft);
            draft.Say("walk.declined");
            return guide.Finish(draft, null);
        }

        if (offered is not null && words.IsNo(plain))
        {
            // Not step by step: the repair itself still stands open.
            draft.Emit(new OfferDeclined(offered) { At = draft.At, By = draft.By });
            draft.Say("walk.not-wanted");
            return guide.Finish(draft, null);
        }

        return null;
    }

    /// <summary>An option of the stop that chooses; null where the message names none.</summary>
    public Turn? Choose(TurnDraft draft, string plain, bool isWhole) =>
        guide.Steps.Choose(draft, plain, p => words.IsYes(p) ? "yes" : words.IsNo(p) ? "no" : p, isWhole) ? guide.Finish(draft, null) : null;

    // "ok" at a step, "done" and "later" at a repair are the dialogue's own business; null where the message is something else.
    private Turn? Step(TurnDraft draft, string plain)
    {
        if (!guide.Stand.IsAtStep(draft.State))
        {
            return null;
        }

        if (guide.Stand.IsAtRepair(draft.State) && !words.IsLater(plain))
        {
            if (words.IsMended(plain))
            {
                return commands.Obey(draft, "done", plain);
            }

            if (!words.IsConfirm(plain) && !words.IsNo(plain))
            {
                return null;
            }

            if (draft.State.Clarification is { What: "fact" } open)
            {
                draft.Emit(new EventWithdrawn(open.Number) { At = draft.At, By = draft.By });
            }

            // An "ok" to what is to be done does not say that it was.
            draft.Say("act.waiting");
            return guide.Finish(draft, null);
        }

        return words.IsConfirm(plain) || words.IsLater(plain) ? commands.Obey(draft, words.IsLater(plain) ? "skip" : "done", plain) : null;
    }
}
