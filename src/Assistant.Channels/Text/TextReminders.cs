using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Reminders;

namespace Assistant.Channels.Text;

/// <summary>Puts the reminders and check-ins that fall due into the outbox of the phones that are on their visit.</summary>
public sealed class TextReminders(EventLog log, ConversationService conversations, ITurnEngine engine, PhraseBook book, TimeProvider clock)
{
    private readonly ReminderStore store = new(log.Database);
    private readonly ReplyOutbox outbox = new(log.Database);

    public async Task GiveDueAsync(CancellationToken cancellation = default)
    {
        var now = clock.GetUtcNow();
        foreach (var due in await store.DueAsync(now, cancellation))
        {
            var phones = due.Conversations.Where(c => c.Channel == TextSettings.Channel).ToList();
            if (phones.Count == 0 || due.IsAlert(now))
            {
                // The alert itself goes to another, and is given by the watch over all channels.
                continue;
            }

            var state = await conversations.StateOfAsync(due.VisitId, cancellation);
            if (due.IsLeftToAnother(state, TextSettings.Channel, now))
            {
                continue;
            }

            var say = due.CheckIn is null ? book.Say("reminder-due", state.Units, ("about", due.About)) : book.Say("check-in.ask", state.Units);
            var reply = Now(state) with { Say = say, Parts = [] };

            // Into the outbox first: killed in between, the same reminder is put in once.
            foreach (var phone in phones)
            {
                await outbox.AddAsync(
                    new(TextSettings.Channel, phone.Conversation, $"reminder {due.VisitId} {due.EventNumber} {phone.Conversation}", reply, now, new(due.VisitId, state.Version)), cancellation);
            }

            await (due.CheckIn is { } expected ? store.MarkAskedAsync(due.VisitId, expected, cancellation: cancellation) : store.MarkDoneAsync(due.VisitId, due.EventNumber, now, cancellation: cancellation));
        }
    }

    // Where the visit stands, without a word being said or stored.
    private Reply Now(VisitState state) => engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply with { Cautions = [] };
}
