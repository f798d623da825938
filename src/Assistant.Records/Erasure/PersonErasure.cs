using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Erasure;

/// <summary>One person's erasure from one visit: names and words go, with the replies that repeat them; the digests stay.</summary>
/// <param name="Numbers">The events to be erased: what the person did, and where another's handover or check-in names them.</param>
/// <param name="Messages">The messages the person sent and those whose reply names them, by channel and id.</param>
/// <param name="WasAlone">True where nobody else spoke on the visit: its conversations are then the person's own address.</param>
internal sealed record PersonErasure(IReadOnlyList<int> Numbers, IReadOnlyList<(string Channel, string Id)> Messages, bool WasAlone)
{
    public static PersonErasure Of(IReadOnlyList<VisitEvent> events, string person)
    {
        var own = events.Where(e => e.By == person).ToList();
        var naming = events.Where(e => e.By != person && Names(e, person, events)).ToList();

        // The reply to whoever handed over says the name as well.
        var told = naming.Select(e => events.OfType<MessageHeard>().LastOrDefault(m => m.Number < e.Number && m.By == e.By)).OfType<MessageHeard>();
        return new(
            [.. own.Concat(naming).Select(e => e.Number).Order()],
            [.. own.OfType<MessageHeard>().Concat(told).Select(m => (m.Channel, m.MessageId)).Distinct()],
            events.OfType<MessageHeard>().All(m => m.By == person || m.By == EventJson.ErasedName));
    }

    public async Task ApplyAsync(RecordsContext context, string visitId)
    {
        foreach (var row in await context.Events.Where(e => e.VisitId == visitId && Numbers.Contains(e.Number)).ToListAsync())
        {
            (row.Personal, row.Salt) = (null, null);
        }

        foreach (var (channel, id) in Messages)
        {
            if (await context.Messages.FindAsync(channel, id) is { } message)
            {
                message.Reply = Silence;
            }

            var replies = await context.Outbox.Where(o => o.Channel == channel && o.MessageId == id).ToListAsync();
            var heads = replies.Select(o => o.PartOf ?? o.Id).ToList();
            context.Outbox.RemoveRange(replies);
            context.Outbox.RemoveRange(await context.Outbox.Where(o => heads.Contains(o.Id) && o.MessageId != id).ToListAsync());
            context.Inbox.RemoveRange(await context.Inbox.Where(i => i.Channel == channel && i.MessageId == id).ToListAsync());
        }

        // What rooms were told of the visit names who said it.
        var told = $"{RoomStore.NewsId} {visitId} ";
        context.Outbox.RemoveRange(await context.Outbox.Where(o => o.VisitId == visitId && o.MessageId.StartsWith(told)).ToListAsync());
        if (WasAlone)
        {
            context.Rooms.RemoveRange(await context.Rooms.Where(r => r.VisitId == visitId && r.Reference != null).ToListAsync());
            context.Conversations.RemoveRange(await context.Conversations.Where(c => c.VisitId == visitId).ToListAsync());
        }
    }

    /// <summary>
    /// Whether an event of somebody else names the person: to whom or from whom the visit was handed over, or who was to be alerted. What is
    /// personal stands under one digest, so that its doer's name goes with it. A check-in that still runs is left: somebody relies on it.
    /// </summary>
    private static bool Names(VisitEvent happened, string person, IReadOnlyList<VisitEvent> events) => happened switch
    {
        HandedOver handed => IsName(handed.From, person) || IsName(handed.To, person) || IsName(handed.To, person.Split(' ')[0]),
        CheckInExpected expected => IsName(expected.Contact, person) && events.Any(e =>
            e is VisitClosed || (e is CheckInEnded ended && ended.Last == expected.Number) || (e is CheckInExpected next && next.Replaces == expected.Number)),
        _ => false,
    };

    // As it was typed: whoever is not on the visit is handed over to by the first name that was said.
    private static bool IsName(string? said, string person) => said is { Length: > 0 } && string.Equals(said, person, StringComparison.OrdinalIgnoreCase);

    private static string Silence { get; } = JsonSerializer.Serialize(
        new Dialogue.Replies.Reply(Dialogue.Replies.Phrase.Empty, [], [], null, [], null, [], null, []), EventJson.Options);
}
