using Assistant.Dialogue.Replies;
using Assistant.Records.Reminders;

namespace Assistant.App.Hosting;

/// <summary>Gives the reminders of a conversation whose time has come, each once.</summary>
public sealed class DueReminders(CallRoom room)
{
    private readonly ReminderStore store = new(room.Log.Database);

    /// <summary>What is said for each, with where the walk stands; marked as given.</summary>
    public async Task<IReadOnlyList<Reply>> TakeDueAsync(string channel, string conversation, DateTimeOffset now, CancellationToken cancellation)
    {
        var given = new List<Reply>();
        foreach (var due in await store.DueAsync(now, cancellation))
        {
            if (due.Conversations.Any(c => c.Channel == channel && c.Conversation == conversation)
                && await store.MarkDoneAsync(due.VisitId, due.EventNumber, now, cancellation))
            {
                var state = await room.Conversations.StateOfAsync(due.VisitId, cancellation);
                var say = room.Dialogue.Phrases.Say("reminder-due", state.Units, ("about", due.About));
                given.Add(room.Now(state) with { Say = say });
            }
        }

        return given;
    }
}
