using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>Sets what is to be said or done later, and looks after a person who works alone.</summary>
internal sealed class Reminders(PhraseBook book, WalkStand stand)
{
    /// <summary>How long an answer may take before the contact is alerted. Common practice.</summary>
    private static readonly TimeSpan Answer = TimeSpan.FromMinutes(5);

    /// <summary>More often is no help, and less often none either.</summary>
    private static readonly (TimeSpan Shortest, TimeSpan Longest) Sensible = (TimeSpan.FromMinutes(5), TimeSpan.FromHours(4));

    public void Set(TurnDraft draft, Reminding wish)
    {
        switch (wish.Kind)
        {
            case RemindingKind.CheckIn:
                CheckIn(draft, wish);
                break;
            case RemindingKind.CheckOff:
                draft.Say(draft.State.CheckIn is null ? "check-in.none" : "check-in.off");
                End(draft);
                break;
            case RemindingKind.FollowUp when wish.DueAt(draft.At) is { } day:
                var due = DateOnly.FromDateTime(day.Date);
                draft.Emit(new FollowUpNoted(due, wish.About.Length > 0 ? wish.About : What(draft.State)) { At = draft.At, By = draft.By });
                draft.Say("remind.follow-up", ("date", due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
                break;
            case RemindingKind.Reminder when wish.DueAt(draft.At) is { } time:
                draft.Emit(new ReminderSet(time, About(draft.State, wish.About)) { At = draft.At, By = draft.By });
                Confirm(draft, wish, time);
                break;
        }
    }

    /// <summary>A word from the person settles a question that was asked, and the next is due after the agreed time. A word from one who is elsewhere says nothing of them.</summary>
    /// <returns>True where the person had been asked.</returns>
    public static bool Heard(TurnDraft draft)
    {
        if (draft.State.CheckIn is not { } asked || asked.Ask > draft.At || (draft.State.Crew.Successor(asked.By) != draft.By && VisitCrew.RoleOf(draft.State, draft.By) != VisitCrew.OnSite))
        {
            return false;
        }

        Expect(draft, asked.Every, asked.Contact, asked.Number);
        return true;
    }

    /// <summary>The visit is over, or the person wants it so: nobody is asked any more.</summary>
    public static void End(TurnDraft draft)
    {
        if (draft.State.CheckIn is { } open)
        {
            draft.Emit(new CheckInEnded(open.Number) { At = draft.At, By = draft.By });
        }
    }

    private static void CheckIn(TurnDraft draft, Reminding wish)
    {
        if (wish.Contact is not { Length: > 0 } contact)
        {
            draft.Say("check-in.contact");
        }
        else if (wish.After is not { } every || every < Sensible.Shortest || every > Sensible.Longest)
        {
            draft.Say("check-in.every", ("shortest", Time(Sensible.Shortest)), ("longest", Time(Sensible.Longest)));
        }
        else
        {
            Expect(draft, every, contact, draft.State.CheckIn?.Number ?? 0);
            draft.Say("check-in.on", ("every", Time(every)), ("answer", Time(Answer)), ("contact", contact));
        }
    }

    /// <summary>The person is asked after that time, and not answered the contact alerted.</summary>
    /// <param name="person">Who is looked after; null for who speaks.</param>
    public static void Expect(TurnDraft draft, TimeSpan every, string contact, int replaces, string? person = null)
    {
        var ask = draft.At + every;
        draft.Emit(new CheckInExpected(every, ask, ask + Answer, contact, replaces) { At = draft.At, By = person ?? draft.By });
    }

    private string About(VisitState state, string about) =>
        about.Length > 0 ? about : book.Say("remind.stop", state.Units, ("stop", What(state))).Full;

    // What the visit is at: the reading asked for, else the walk.
    private string What(VisitState state) => Asker.FactAt(state) is { } fact ? book.Word(fact.Name) : stand.Walk(state).Title;

    private static void Confirm(TurnDraft draft, Reminding wish, DateTimeOffset due)
    {
        if (wish.After is { } after && after < TimeSpan.FromHours(12))
        {
            draft.Say("walk.remind", ("time", Time(after)));
        }
        else
        {
            draft.Say("remind.at", ("date", due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), ("clock", due.ToString("HH:mm", CultureInfo.InvariantCulture)));
        }
    }

    private static Amount Time(TimeSpan time) => new(time.TotalSeconds, Dimension.Time);
}
