using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Records.Reminders;

namespace Assistant.App.Hosting;

/// <summary>Gives the reminders of a conversation whose time has come, each once, and alerts the contact of who does not answer.</summary>
public sealed class DueReminders(CallRoom room)
{
    private readonly ReminderStore store = new(room.Log.Database);
    private readonly ContactAlert alerts = new(room.Log.Database);

    /// <summary>What is said for each, with where the walk stands; marked as given.</summary>
    public async Task<IReadOnlyList<Reply>> TakeDueAsync(string channel, string conversation, DateTimeOffset now, CancellationToken cancellation)
    {
        var given = new List<Reply>();
        foreach (var due in await store.DueAsync(now, cancellation))
        {
            if (due.Conversations.Any(c => c.Channel == channel && c.Conversation == conversation) && await GiveAsync(due, now, cancellation) is { } reply)
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
            await GiveAsync(due, now, cancellation);
        }
    }

    private async Task<Reply?> GiveAsync(DueReminder due, DateTimeOffset now, CancellationToken cancellation)
    {
        var state = await room.Conversations.StateOfAsync(due.VisitId, cancellation);
        var stands = room.Now(state);
        Phrase Say(string key, params ReadOnlySpan<Trade.Rules.ReasonPart> parts) => room.Dialogue.Phrases.Say(key, state.Units, parts);
        if (due.CheckIn is not { } expected)
        {
            return await store.MarkDoneAsync(due.VisitId, due.EventNumber, now, cancellation) ? stands with { Say = Say("reminder-due", ("about", due.About)) } : null;
        }

        if (!due.IsAlert(now))
        {
            return await store.MarkAskedAsync(due.VisitId, expected, cancellation) ? stands with { Say = Say("check-in.ask") } : null;
        }

        // Put in before it is marked: a crash between the two alerts again, never not at all. The outbox takes the same alert once.
        var clock = expected.Ask.ToString("HH:mm", CultureInfo.InvariantCulture);
        var alert = Say("check-in.alert", ("person", expected.By), ("site", state.Site ?? ""), ("clock", clock), ("place", state.Place ?? ""));
        await alerts.SendAsync(due, stands with { Say = alert, Ask = null, Choices = [], AskedFact = null }, now, cancellation);
        return await store.MarkDoneAsync(due.VisitId, due.EventNumber, now, cancellation) ? stands with { Say = Say("check-in.alerted", ("contact", expected.Contact)) } : null;
    }
}
