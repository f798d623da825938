using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Outbox;

/// <summary>
/// The replies a channel delivers itself: stored with the events they answer, so that none is lost with the process. A row waits, is
/// being tried, was given to the channel, and in the end arrived or was given up.
/// </summary>
public sealed class ReplyOutbox(IRecordsDatabase database)
{
    private const int MostLooked = 500;

    /// <summary>What the channel should try to deliver now, oldest first.</summary>
    public Task<ImmutableArray<OutboxItem>> DueAsync(string channel, DateTimeOffset now, int most = 100, CancellationToken cancellation = default) =>
        database.UseAsync(async context =>
        {
            var rows = await Waiting(context, channel).Where(o => o.Due <= now).OrderBy(o => o.Id).Take(most).ToListAsync(cancellation);
            return rows.Select(Item).ToImmutableArray();
        });

    /// <summary>True where the reply to that message is in the outbox, delivered or not.</summary>
    public Task<bool> HasAsync(string channel, string messageId, CancellationToken cancellation = default) =>
        database.UseAsync(context => context.Outbox.AnyAsync(o => o.Channel == channel && o.MessageId == messageId, cancellation));

    /// <summary>
    /// Takes the one reply to try next, or null: an attempt begins, and until it is known how it ended nobody else makes one. A
    /// conversation's replies go out in their order: one that waits holds up those behind it.
    /// </summary>
    /// <param name="doubtful">An attempt begun before this time, whose end is not known, is made again.</param>
    /// <param name="grouping">Whose replies wait for each other and go out as one, or null for nobody's.</param>
    public Task<OutboxItem?> TakeNextAsync(string channel, DateTimeOffset now, DateTimeOffset doubtful, Grouping? grouping = null, CancellationToken cancellation = default) =>
        database.WriteAsync(async context =>
        {
            var waiting = await Waiting(context, channel).OrderBy(o => o.Id).Take(MostLooked)
                .Select(o => new { o.Id, o.Conversation, o.Due, o.TriedAt, o.Attempts }).ToListAsync(cancellation);
            var first = waiting.GroupBy(o => o.Conversation)
                .Where(o => o.First().Due <= now && (o.First().TriedAt is not { } tried || tried <= doubtful)
                    && (grouping is null || o.First().Attempts > 0 || grouping.IsReady(o.Key, o.First().Due, o.Last(l => l.Due <= now).Due, now)))
                .Select(o => o.First().Id).ToList();
            if (first.Count == 0)
            {
                return null;
            }

            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            if (await context.HoldFirstAsync(first, doubtful, cancellation) is not { } row)
            {
                return null;
            }

            if (row.Attempts == 0 && grouping?.Groups(row.Conversation) is true)
            {
                await GroupAsync(context, row, now, cancellation);
            }

            var item = Item(row);
            (row.TriedAt, row.Attempts) = (now, row.Attempts + 1);
            await context.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return item;
        }, cancellation);

    /// <summary>The replies of a conversation that were tried and are not known to be there: a channel may find out that one is.</summary>
    public Task<ImmutableArray<OutboxItem>> TriedAsync(string channel, string conversation, CancellationToken cancellation = default) =>
        database.UseAsync(async context =>
        {
            var rows = await Waiting(context, channel).Where(o => o.Conversation == conversation && o.Attempts > 0).OrderBy(o => o.Id).Take(MostLooked).ToListAsync(cancellation);
            return rows.Select(Item).ToImmutableArray();
        });

    /// <summary>Puts a reply in that no message caused, such as a reminder; the same id is put in once.</summary>
    public async Task AddAsync(UnaskedReply unasked, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(unasked);
        try
        {
            await database.WriteAsync(async context =>
            {
                context.Outbox.Add(new()
                {
                    Channel = unasked.Channel,
                    Conversation = unasked.Conversation,
                    MessageId = unasked.Id,
                    Reply = JsonSerializer.Serialize(unasked.Reply, EventJson.Options),
                    Due = unasked.Due,
                    VisitId = unasked.Seen?.VisitId,
                    Version = unasked.Seen?.Version,
                });
                return await context.SaveChangesAsync(cancellation);
            }, cancellation);
        }
        catch (RecordsException there) when (there.InnerException is { } cause && database.IsAlreadyThere(cause))
        {
            // The same id again: it waits already, or was delivered.
        }
    }

    /// <inheritdoc cref="AddAsync(UnaskedReply, CancellationToken)"/>
    public Task AddAsync(string channel, string conversation, string id, Reply reply, DateTimeOffset due, CancellationToken cancellation = default) =>
        AddAsync(new(channel, conversation, id, reply, due), cancellation);

    /// <summary>An attempt begins: from here until it is known how it ended nobody else makes one.</summary>
    public Task BeginAsync(long id, DateTimeOffset at, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => o.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.TriedAt, at).SetProperty(o => o.Attempts, o => o.Attempts + 1), cancellation), cancellation);

    /// <summary>The channel took it over in the attempt under way. It counts as read from the attempt's beginning on.</summary>
    public Task HandedOverAsync(long id, DateTimeOffset at, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => (o.Id == id || o.PartOf == id) && o.DeliveredAt == null && o.GaveUpAt == null)
            .ExecuteUpdateAsync(
                set => set.SetProperty(o => o.DeliveredAt, o => o.TriedAt ?? at).SetProperty(o => o.TriedAt, (DateTimeOffset?)null), cancellation), cancellation);

    public Task DeliveredAsync(long id, DateTimeOffset at, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => o.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.DeliveredAt, at).SetProperty(o => o.Attempts, o => o.Attempts + 1), cancellation), cancellation);

    /// <summary>Delivery failed; it is tried again after that time.</summary>
    public Task FailedAsync(long id, DateTimeOffset tryAgain, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => o.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.Due, tryAgain).SetProperty(o => o.Attempts, o => o.Attempts + 1), cancellation), cancellation);

    /// <summary>The attempt under way failed for certain: another after that time.</summary>
    public Task TryAgainAsync(long id, DateTimeOffset due, string trouble, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => o.Id == id && o.ReportedAt == null)
            .ExecuteUpdateAsync(
                set => set.SetProperty(o => o.Due, due).SetProperty(o => o.Trouble, trouble)
                    .SetProperty(o => o.TriedAt, (DateTimeOffset?)null).SetProperty(o => o.DeliveredAt, (DateTimeOffset?)null),
                cancellation), cancellation);

    /// <summary>It is tried no more.</summary>
    public Task GiveUpAsync(long id, DateTimeOffset at, string trouble, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Outbox.Where(o => (o.Id == id || o.PartOf == id) && o.ReportedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.GaveUpAt, at).SetProperty(o => o.Trouble, trouble).SetProperty(o => o.TriedAt, (DateTimeOffset?)null), cancellation), cancellation);

    /// <summary>The channel reported that it arrived.</summary>
    public async Task ArrivedAsync(long id, DateTimeOffset at, CancellationToken cancellation = default)
    {
        await HandedOverAsync(id, at, cancellation);
        await database.WriteAsync(context => context.Outbox.Where(o => o.Id == id && o.ReportedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.ReportedAt, at).SetProperty(o => o.GaveUpAt, (DateTimeOffset?)null), cancellation), cancellation);
    }

    /// <summary>How often it was tried, or null where there is no such reply that has not arrived.</summary>
    public Task<int?> AttemptsAsync(long id, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Outbox.Where(o => o.Id == id && o.ReportedAt == null && o.GaveUpAt == null).Select(o => (int?)o.Attempts).FirstOrDefaultAsync(cancellation));

    /// <summary>The replies that were given up, newest first, fifty at most.</summary>
    public Task<ImmutableArray<LostReply>> LostAsync(string channel, CancellationToken cancellation = default) => database.UseAsync(async context =>
        (await context.Outbox.AsNoTracking().Where(o => o.Channel == channel && o.GaveUpAt != null).OrderByDescending(o => o.Id).Take(50).ToListAsync(cancellation))
        .Select(o => new LostReply(o.Id, o.Conversation, o.MessageId, o.GaveUpAt!.Value, o.Trouble ?? "")).ToImmutableArray());

    /// <summary>True while an attempt begun since then in that conversation has not ended: whether its reader has it is not known yet.</summary>
    public Task<bool> IsUnderWayAsync(string channel, string conversation, DateTimeOffset since, CancellationToken cancellation = default) => database.UseAsync(context =>
        Waiting(context, channel).AnyAsync(o => o.Conversation == conversation && o.TriedAt != null && o.TriedAt >= since, cancellation));

    /// <summary>What a conversation's reader had been told by then of the visit the last reply spoke of, or null where nothing.</summary>
    public Task<SeenVisit?> SeenAsync(string channel, string conversation, DateTimeOffset by, CancellationToken cancellation = default) => database.UseAsync(context =>
        context.Outbox.AsNoTracking()
            .Where(o => o.Channel == channel && o.Conversation == conversation && o.DeliveredAt != null && o.DeliveredAt <= by && o.VisitId != null)
            .OrderByDescending(o => o.DeliveredAt).ThenByDescending(o => o.Id)
            .Select(o => new SeenVisit(o.VisitId!, o.Version ?? 0)).FirstOrDefaultAsync(cancellation));

    // Whoever holds a conversation's first row holds those behind it: nobody takes one of them before it.
    private static async Task GroupAsync(RecordsContext context, OutboxRow first, DateTimeOffset now, CancellationToken cancellation)
    {
        var others = await context.Outbox
            .Where(o => o.Channel == first.Channel && o.Conversation == first.Conversation && o.Id > first.Id && o.Due <= now
                && o.DeliveredAt == null && o.GaveUpAt == null && o.PartOf == null && o.Attempts == 0)
            .OrderBy(o => o.Id).Take(Grouping.Most - 1).ToListAsync(cancellation);
        first.Reply = JsonSerializer.Serialize(ReplyGroup.Of([Read(first), .. others.Select(Read)]), EventJson.Options);
        foreach (var other in others)
        {
            other.PartOf = first.Id;
            (first.VisitId, first.Version) = other.VisitId is null ? (first.VisitId, first.Version) : (other.VisitId, other.Version);
        }
    }

    private static Reply Read(OutboxRow row) => JsonSerializer.Deserialize<Reply>(row.Reply, EventJson.Options)!;

    private static IQueryable<OutboxRow> Waiting(RecordsContext context, string channel) =>
        context.Outbox.AsNoTracking().Where(o => o.Channel == channel && o.DeliveredAt == null && o.GaveUpAt == null && o.PartOf == null);

    private static OutboxItem Item(OutboxRow row) =>
        new(row.Id, row.Channel, row.Conversation, row.MessageId, Read(row), row.Attempts);
}
