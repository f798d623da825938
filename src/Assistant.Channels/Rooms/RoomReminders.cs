using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Reminders;
using Assistant.Records.Rooms;

namespace Assistant.Channels.Rooms;

/// <summary>Puts the reminders and check-ins that fall due into the outbox of the conversations that can be written to and are on their visit.</summary>
/// <param name="named">A channel that needs no more than the conversation's name to write there, or null.</param>
public sealed class RoomReminders(EventLog log, ConversationService conversations, ITurnEngine engine, PhraseBook book, string? named, TimeProvider clock)
{
    private readonly ReminderStore store = new(log.Database);
    private readonly RoomStore known = new(log.Database);
    private readonly ReplyOutbox outbox = new(log.Database);

    public async Task GiveDueAsync(CancellationToken cancellation = default)
    {
        var now = clock.GetUtcNow();
        var waiting = await store.DueAsync(now, cancellation);
        var noted = waiting.IsEmpty ? [] : (await known.WithReferenceAsync(cancellation)).Select(r => new ConversationAddress(r.Channel, r.Conversation)).ToHashSet();
        foreach (var due in waiting)
        {
            var rooms = due.Conversations.Where(c => c.Channel == named || noted.Contains(c)).ToList();
            if (rooms.Count == 0 || due.IsAlert(now))
            {
                // The alert itself goes to another, and is given by the watch over all channels.
                continue;
            }

            var state = await conversations.StateOfAsync(due.VisitId, cancellation);
            if (rooms.Select(r => r.Channel).Distinct().All(c => due.IsLeftToAnother(state, c, now)))
            {
                continue;
            }

            var say = due.CheckIn is null ? book.Say("reminder-due", state.Units, ("about", due.About)) : book.Say("check-in.ask", state.Units);
            var reply = engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply with { Cautions = [], Say = say, Parts = [] };

            // Into the outbox first: killed in between, the same reminder is put in once.
            foreach (var room in rooms)
            {
                await outbox.AddAsync(
                    new(room.Channel, room.Conversation, $"reminder {due.VisitId} {due.EventNumber} {due.Due.UtcDateTime:O} {room.Conversation}", reply, now, new(due.VisitId, state.Version)), cancellation);
            }

            await (due.CheckIn is { } expected ? store.MarkAskedAsync(due.VisitId, expected, cancellation: cancellation) : store.MarkDoneAsync(due.VisitId, due.EventNumber, now, cancellation: cancellation));
        }
    }
}
