using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Outbox;

/// <summary>The replies a channel delivers itself: stored with the events they answer, so that none is lost with the process. At least once.</summary>
public sealed class ReplyOutbox(IRecordsDatabase database)
{
    /// <summary>What the channel should try to deliver now, oldest first.</summary>
    public Task<ImmutableArray<OutboxItem>> DueAsync(string channel, DateTimeOffset now, int most = 100, CancellationToken cancellation = default) =>
        database.UseAsync(async context =>
        {
            var rows = await context.Outbox.AsNoTracking()
                .Where(o => o.Channel == channel && o.DeliveredAt == null && o.Due <= now)
                .OrderBy(o => o.Id).Take(most).ToListAsync(cancellation);
            return rows.Select(o => new OutboxItem(
                o.Id, o.Channel, o.Conversation, o.MessageId, JsonSerializer.Deserialize<Reply>(o.Reply, EventJson.Options)!, o.Attempts)).ToImmutableArray();
        });

    /// <summary>Puts a reply in that no message caused, such as a reminder; the id says which it is, and the same id is put in once.</summary>
    public async Task AddAsync(string channel, string conversation, string id, Reply reply, DateTimeOffset due, CancellationToken cancellation = default)
    {
        try
        {
            await database.UseAsync(async context =>
            {
                context.Outbox.Add(new() { Channel = channel, Conversation = conversation, MessageId = id, Reply = JsonSerializer.Serialize(reply, EventJson.Options), Due = due });
                return await context.SaveChangesAsync(cancellation);
            });
        }
        catch (RecordsException there) when (there.InnerException is { } cause && database.IsAlreadyThere(cause))
        {
            // The same id again: it waits already, or was delivered.
        }
    }

    public Task DeliveredAsync(long id, DateTimeOffset at, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Outbox.Where(o => o.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.DeliveredAt, at).SetProperty(o => o.Attempts, o => o.Attempts + 1), cancellation));

    /// <summary>Delivery failed; it is tried again after that time.</summary>
    public Task FailedAsync(long id, DateTimeOffset tryAgain, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Outbox.Where(o => o.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.Due, tryAgain).SetProperty(o => o.Attempts, o => o.Attempts + 1), cancellation));
}
