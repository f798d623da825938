using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Reminders;

namespace Assistant.App.Hosting;

/// <summary>Gives the reminders of a conversation whose time has come, each once, and alerts the contact of who does not answer.</summary>
public sealed class DueReminders(CallRoom room)
{
    private readonly ReminderStore store = new(room.Log.Database);
    private readonly ContactAlert alerts = new(room.Log.Database);

    /// <summary>What is said for each, with where the walk stands; marked as given.</summary>
    /// <param name="asking">Names the asking, or null. Asked again under its name after an answer that did not arrive, it gets that answer again.</param>
    public async Task<IReadOnlyList<Reply>> TakeDueAsync(string channel, string conversation, DateTimeOffset now, CancellationToken cancellation, string? asking = null)
    {
        var given = new List<Reply>();
        if (asking is not null && await room.Log.VisitOfAsync(channel, conversation, cancellation) is { } visit)
        {
            foreach (var before in await store.GivenAsync(visit, asking, cancellation))
            {
                given.Add(await SayAsync(before, before.IsDone, cancellation));
            }
        }

        foreach (var due in await store.DueAsync(now, cancellation))
        {
            if (due.Conversations.Any(c => c.Channel == channel && c.Conversation == conversation)
                && !due.IsLeftToAnother(await room.Conversations.StateOfAsync(due.VisitId, cancellation), channel, now)
                && await GiveAsync(due, now, asking, cancellation) is { } reply)
            {
                given.Add(reply);
            }
        }

        return given;
    }

    /// <summary>Alerts the contacts whose time has come, on whatever visit: the phone of the one who does not answer may be dead.</summary>
    public async Task AlertAsync(DateTimeOffset now, CancellationToken cancellation)
    {
        foreach (var due in (await store.DueAsync(now, cancellation)).Where(d => d.IsAlert(now)))
        {
            await GiveAsync(due, now, null, cancellation);
        }
    }

    private async Task<Reply?> GiveAsync(DueReminder due, DateTimeOffset now, string? asking, CancellationToken cancellation)
    {
        var isAlert = due.IsAlert(now);
        if (due.CheckIn is { } expected && !isAlert)
        {
            return await store.MarkAskedAsync(due.VisitId, expected, asking, cancellation) ? await SayAsync(due, isAlert, cancellation) : null;
        }

        if (due.CheckIn is not null)
        {
            // Put in before it is marked: a crash between the two alerts again, never not at all. The outbox takes the same alert once.
            await alerts.SendAsync(due, await AlertOfAsync(due, due.CheckIn, cancellation), now, cancellation);
        }

        return await store.MarkDoneAsync(due.VisitId, due.EventNumber, now, asking, cancellation) ? await SayAsync(due, isAlert, cancellation) : null;
    }

    /// <param name="isAlerted">True where the contact was alerted.</param>
    private async Task<Reply> SayAsync(DueReminder due, bool isAlerted, CancellationToken cancellation)
    {
        var state = await room.Conversations.StateOfAsync(due.VisitId, cancellation);
        return room.Now(state) with
        {
            Say = due.CheckIn switch
            {
                null => room.Dialogue.Phrases.Say("reminder-due", state.Units, ("about", due.About)),
                { } expected when isAlerted => room.Dialogue.Phrases.Say("check-in.alerted", state.Units, ("contact", expected.Contact)),
                _ => room.Dialogue.Phrases.Say("check-in.ask", state.Units),
            },
        };
    }

    private async Task<Reply> AlertOfAsync(DueReminder due, CheckInExpected expected, CancellationToken cancellation)
    {
        var state = await room.Conversations.StateOfAsync(due.VisitId, cancellation);
        var clock = expected.Ask.ToString("HH:mm", CultureInfo.InvariantCulture);
        var alert = room.Dialogue.Phrases.Say(
            "check-in.alert", state.Units, ("person", expected.By), ("site", state.Site ?? ""), ("clock", clock), ("place", state.Place ?? ""));
        return room.Now(state) with { Say = alert, Ask = null, Choices = [], AskedFact = null };
    }
}
