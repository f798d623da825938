using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>The commands that work everywhere.</summary>
internal sealed class Commands(PhraseBook book, ShortWords words, WalkLibrary library, WalkGuide guide)
{
    private readonly Undoer undoer = new(book, library);
    private readonly Reminders reminders = new(book, guide.Stand);
    private readonly StatusTeller status = new(book);
    private readonly CrewCommands crew = new(book, guide.Stand);

    /// <param name="understood">What "begin" and "remind" bring with them, or null.</param>
    public Turn Obey(TurnDraft draft, string command, string text, Understood? understood = null)
    {
        switch (command)
        {
            case "emergency":
                return guide.Emergency(draft);
            case "why":
                guide.TellWhy(draft);
                break;
            case "skip":
                guide.Steps.Skip(draft);
                break;
            case "undo":
                undoer.Undo(draft);
                break;
            case "remind" when understood?.Reminding is { } wish:
                reminders.Set(draft, wish);
                break;
            case "leak" when understood?.Leak is { } leak:
                LeakTaker.Take(draft, leak);
                break;
            case "ask-for" or "never-mind" when understood?.Requested is { } wish:
                RequestTaker.Take(draft, wish);
                break;
            case "begin" when understood?.Walk is { } walk:
                guide.Switch.Go(draft, walk);
                break;
            case "status":
                status.Status(draft, guide.Stand.Leader(draft.State), guide.Stand.Titles(draft.State));
                break;
            case "report":
                status.Report(draft);
                break;
            case "pause":
                draft.Emit(new VisitPaused { At = draft.At, By = draft.By });
                draft.Say("command.paused");
                break;
            case "resume":
                Resume(draft, text);
                break;
            case "help":
                draft.Say("command.help");
                break;
            case "done":
                guide.Steps.Done(draft, words.IsClosing(ShortWords.Plain(text)));
                break;
            case "units-us" or "units-metric":
                UnitTeller.Choose(draft, command == "units-us" ? UnitSystem.Us : UnitSystem.Metric);
                break;
            case "handover":
                crew.HandOver(draft, text);
                break;
            case "who":
                crew.Who(draft);
                break;
            case "watch":
                crew.Watch(draft);
                break;
            case "unwatch":
                CrewCommands.EndWatch(draft);
                break;
            case "leave":
                CrewCommands.Leave(draft);
                break;
            case "more":
                guide.TellMore(draft);
                break;
        }

        // "repeat" adds nothing: the question that closes every reply is asked again.
        var turn = guide.Finish(draft, null);
        return command == "more" ? turn with { Reply = turn.Reply with { IsWhole = true } } : turn;
    }

    private void Resume(TurnDraft draft, string text)
    {
        if (draft.State.IsPaused)
        {
            draft.Emit(new VisitResumed { At = draft.At, By = draft.By });
            draft.Say("command.resumed");
        }
        else if (draft.State.Offered is not null)
        {
            WalkSwitch.Decline(draft);
            draft.Say("command.resumed");
        }
        else if (!words.IsResume(ShortWords.Plain(text)) || !guide.Switch.Leave(draft))
        {
            draft.Say("command.not-paused");
        }
    }
}
