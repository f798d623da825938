using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;

namespace Assistant.Dialogue.Turns;

/// <summary>"undo": takes back what the last message that changed anything led to, and says what counts again.</summary>
internal sealed class Undoer(PhraseBook book, WalkLibrary library)
{
    public void Undo(TurnDraft draft)
    {
        var before = draft.State;
        if (before.Clarification is { } open)
        {
            draft.Emit(new EventWithdrawn(open.Number) { At = draft.At, By = draft.By });
            draft.Say("clarify.dropped");
            return;
        }

        // What the record brought was nobody's message and stays.
        var last = before.Undoable.IsEmpty || before.Undoable.Peek().Message == 0 ? 0 : before.Undoable.Peek().Message;
        if (last == 0)
        {
            draft.Say("command.undo-nothing");
            return;
        }

        foreach (var undone in before.Undoable.TakeWhile(u => u.Message == last))
        {
            if (Replaced(before, undone.Number) is { } lost)
            {
                draft.Emit(FactTaker.Event(lost.Value!, lost.Place ?? "anywhere", lost.Stop, lost.At, lost.By));
            }

            draft.Emit(new EventWithdrawn(undone.Number) { At = draft.At, By = draft.By });
            if (before.Settled.Find(s => s.Number == undone.Number) is { } settled)
            {
                Unsettle(draft, settled);
            }
        }

        Report(draft, before);
    }

    // What was put right by mistake stands again, at its time.
    private static TakenFact? Replaced(VisitState state, int number) =>
        state.History.Values.SelectMany(entries => entries).FirstOrDefault(t => t.Number == number)?.InsteadOf;

    // The reading that was taken out stands again, at its time and as its reader's, and which of the two counts is open again.
    private static void Unsettle(TurnDraft draft, SettledDispute settled)
    {
        draft.Emit(FactTaker.Event(settled.Lost.Value!, settled.Lost.Place ?? "anywhere", settled.Lost.Stop, settled.Lost.At, settled.Lost.By));
        var (lost, counts) = (draft.State.Version, settled.Counts);
        var isLostEarlier = draft.State.History[settled.Fact].FindIndex(t => t.Number == lost) < draft.State.History[settled.Fact].FindIndex(t => t.Number == counts);
        draft.Emit(new ReadingsDiffer(settled.Fact.Name, isLostEarlier ? lost : counts, isLostEarlier ? counts : lost) { At = draft.At, By = draft.By });
        draft.Say("differ.reopened", ("fact", settled.Fact.Name));
    }

    private void Report(TurnDraft draft, VisitState before)
    {
        var after = draft.State;
        if (before.Mended.Count != after.Mended.Count)
        {
            draft.Say("command.undone-mended");
        }
        else if (before.Outcome is not null && after.Outcome is null)
        {
            draft.Say("command.undone-close");
        }
        else if (before.Run?.StartedBy != after.Run?.StartedBy && after.Walk is { } walk)
        {
            draft.Say("command.undone-walk", ("walk", library.Machine(walk).Walk.Title));
        }
        else if (before.Confirmed.Count() != after.Confirmed.Count())
        {
            draft.Say("command.undone-confirm");
        }
        else if (before.Units != after.Units)
        {
            draft.Say(UnitTeller.Key(after.Units));
        }
        else if (before.Skipped.Count() != after.Skipped.Count())
        {
            draft.Say("command.undone-skip");
        }

        foreach (var (_, _, option) in before.Choices.Where(c => !after.Choices.Contains(c)))
        {
            draft.Say("command.undone", ("what", book.Word(option)));
        }

        foreach (var (_, place) in before.Leaks.Where(l => !after.Leaks.Contains(l)))
        {
            draft.Say("leak.undone", ("place", place));
        }

        // A cylinder's account is said as one, not by the facts it was told with.
        var fromCylinder = before.Cylinders != after.Cylinders && before.Cylinders.Current?.Tag is not null;
        if (fromCylinder)
        {
            draft.Say("cylinder.undone", ("tag", before.Cylinders.Current!.Tag!));
            foreach (var account in new CylinderTeller(book).Tell(after))
            {
                draft.Say(account);
            }
        }

        foreach (var value in before.Facts.Values.Where(v => !after.Disputes.ContainsKey(v.Fact) && (!fromCylinder || !CylinderTaker.Told.Contains(v.Fact))).OrderBy(v => v.Fact.Name, StringComparer.Ordinal))
        {
            var now = after.Facts.Find(value.Fact);
            if (now is null)
            {
                draft.Say("command.undone", ("what", $"{book.Word(value.Fact.Name)} {book.Word(FactText.Of(value))}"));
            }
            else if (now != value)
            {
                draft.Say(
                    "command.undone-restored",
                    ("what", $"{book.Word(value.Fact.Name)} {book.Word(FactText.Of(value))}"),
                    ("before", FactText.Of(now)));
            }
        }

        foreach (var questioned in before.Questioned.Values.Where(q => !after.Questioned.ContainsKey(q.Value.Fact)))
        {
            draft.Say("command.undone", ("what", $"{book.Word(questioned.Value.Fact.Name)} {FactText.Of(questioned.Value)}"));
        }
    }
}
