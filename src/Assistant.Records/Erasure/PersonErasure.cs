using System.Text.Json;
using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Erasure;

/// <summary>One person's erasure from one visit: names and words go, with the replies that repeat them; the digests stay.</summary>
/// <param name="Numbers">The events to be erased.</param>
/// <param name="Messages">The messages the person sent, by channel and id.</param>
/// <param name="WasAlone">True where nobody else spoke on the visit: its conversations are then the person's own address.</param>
internal sealed record PersonErasure(IReadOnlyList<int> Numbers, IReadOnlyList<(string Channel, string Id)> Messages, bool WasAlone)
{
    public static PersonErasure Of(IReadOnlyList<VisitEvent> events, string person)
    {
        var own = events.Where(e => e.By == person).ToList();
        return new(
            own.ConvertAll(e => e.Number),
            [.. own.OfType<MessageHeard>().Select(m => (m.Channel, m.MessageId))],
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

    private static string Silence { get; } = JsonSerializer.Serialize(
        new Dialogue.Replies.Reply(Dialogue.Replies.Phrase.Empty, [], [], null, [], null, [], null, []), EventJson.Options);
}
