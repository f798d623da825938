using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Rooms;

/// <summary>
/// The rooms, and up to where each has been told of its visit. What a room is told goes into the outbox in one commit with the note that it
/// was: stopped anywhere nothing is told twice or not at all, and of several programs one tells it.
/// </summary>
public sealed class RoomStore(IRecordsDatabase database)
{
    /// <summary>Notes a room, or what is new of it. It is on the visit that its conversation is on, from now on.</summary>
    public async Task SaveAsync(Room room, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(room);
        for (var isFirst = true; ; isFirst = false)
        {
            try
            {
                await database.WriteAsync(context => SaveAsync(context, room, cancellation), cancellation);
                return;
            }
            catch (RecordsException there) when (isFirst && there.InnerException is { } cause && database.IsAlreadyThere(cause))
            {
                // Another noted it at the same moment.
            }
        }
    }

    public Task<Room?> FindAsync(string channel, string conversation, CancellationToken cancellation = default) => database.UseAsync(async context =>
        await context.Rooms.AsNoTracking().FirstOrDefaultAsync(r => r.Channel == channel && r.Conversation == conversation, cancellation) is { } row ? Read(row) : null);

    /// <summary>The rooms of visits that hold more than they were told of, and those whose summary was not posted yet.</summary>
    public Task<ImmutableArray<Room>> BehindAsync(CancellationToken cancellation = default) => BehindAsync(all => all, cancellation);

    /// <summary>The same of certain visits only: found by their index, however many rooms there are.</summary>
    public Task<ImmutableArray<Room>> BehindAsync(IReadOnlyCollection<string> visits, CancellationToken cancellation = default) =>
        BehindAsync(all => all.Where(r => r.VisitId != null && visits.Contains(r.VisitId)), cancellation);

    private Task<ImmutableArray<Room>> BehindAsync(Func<IQueryable<RoomRow>, IQueryable<RoomRow>> of, CancellationToken cancellation) => database.UseAsync(async context =>
        (await of(context.Rooms.AsNoTracking()).Join(context.Visits, r => r.VisitId, v => v.Id, (r, v) => new { Room = r, v.Version })
            .Where(r => r.Version > r.Room.Told || (r.Room.CanEdit && r.Room.SummaryId == null)).Select(r => r.Room).ToListAsync(cancellation)).Select(Read).ToImmutableArray());

    /// <summary>The rooms that can be written to unasked by what is on record of them.</summary>
    public Task<ImmutableArray<Room>> WithReferenceAsync(CancellationToken cancellation = default) => database.UseAsync(async context =>
        (await context.Rooms.AsNoTracking().Where(r => r.Reference != null).ToListAsync(cancellation)).Select(Read).ToImmutableArray());

    /// <summary>The version of the room's visit that was last spoken of in it, said or on its way; 0 where none was.</summary>
    public Task<int> ShownAsync(Room room, CancellationToken cancellation = default) => database.UseAsync(async context =>
        await context.Outbox.AsNoTracking().Where(o => o.Channel == room.Channel && o.Conversation == room.Conversation && o.VisitId == room.VisitId)
            .MaxAsync(o => o.Version, cancellation) ?? 0);

    /// <summary>The room is told of its visit up to that version.</summary>
    /// <param name="room">The room as it was read: where another told it meanwhile nothing is stored.</param>
    /// <param name="post">What it is told, or null where nothing of it is news there.</param>
    /// <returns>False where another told it meanwhile.</returns>
    public Task<bool> ToldAsync(Room room, int version, Reply? post, DateTimeOffset now, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        var isOurs = await context.Rooms
            .Where(r => r.Channel == room.Channel && r.Conversation == room.Conversation && r.VisitId == room.VisitId && r.Told == room.Told)
            .ExecuteUpdateAsync(set => set.SetProperty(r => r.Told, version), cancellation) == 1;
        if (isOurs && post is not null)
        {
            context.Outbox.Add(new()
            {
                Channel = room.Channel,
                Conversation = room.Conversation,
                MessageId = $"{NewsId} {room.VisitId} {room.Told}-{version} {room.Conversation}",
                Reply = JsonSerializer.Serialize(post, EventJson.Options),
                Due = now,
                VisitId = room.VisitId,
                Version = version,
            });
            await context.SaveChangesAsync(cancellation);
        }

        await transaction.CommitAsync(cancellation);
        return isOurs;
    }, cancellation);

    /// <summary>The room's service changes no posts.</summary>
    public Task CanNotEditAsync(Room room, CancellationToken cancellation = default) => database.WriteAsync(context =>
        context.Rooms.Where(r => r.Channel == room.Channel && r.Conversation == room.Conversation).ExecuteUpdateAsync(set => set.SetProperty(r => r.CanEdit, false), cancellation), cancellation);

    /// <summary>The room is gone, or the program is no longer in it: it is on no visit, and what waits for it is given up.</summary>
    public Task ForgetAsync(string channel, string conversation, DateTimeOffset at, string trouble, CancellationToken cancellation = default) => database.WriteAsync(async context =>
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.Rooms.Where(r => r.Channel == channel && r.Conversation == conversation).ExecuteDeleteAsync(cancellation);
        await context.Conversations.Where(c => c.Channel == channel && c.Conversation == conversation).ExecuteDeleteAsync(cancellation);
        await context.Outbox.Where(o => o.Channel == channel && o.Conversation == conversation && o.DeliveredAt == null && o.GaveUpAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(o => o.GaveUpAt, at).SetProperty(o => o.Trouble, trouble).SetProperty(o => o.TriedAt, (DateTimeOffset?)null), cancellation);
        await transaction.CommitAsync(cancellation);
        return 0;
    }, cancellation);

    internal const string NewsId = "news";

    private static async Task<int> SaveAsync(RecordsContext context, Room room, CancellationToken cancellation)
    {
        if (await context.Rooms.FindAsync([room.Channel, room.Conversation], cancellation) is not { } row)
        {
            row = context.Rooms.Add(new() { Channel = room.Channel, Conversation = room.Conversation }).Entity;
            var visit = await context.Conversations.Where(c => c.Channel == room.Channel && c.Conversation == room.Conversation)
                .Join(context.Visits, c => c.VisitId, v => v.Id, (c, v) => v).AsNoTracking().FirstOrDefaultAsync(cancellation);
            (row.VisitId, row.Told) = (visit?.Id, visit?.Version ?? 0);
        }

        // That its service changes no posts was found out by trying.
        var canEdit = row.Reference == room.Reference ? row.CanEdit : room.CanEdit;
        (row.Reference, row.IsGroup, row.CanEdit) = (room.Reference, room.IsGroup, canEdit);
        return await context.SaveChangesAsync(cancellation);
    }

    internal static Room Read(RoomRow row) => new(row.Channel, row.Conversation, row.Reference, row.IsGroup, row.CanEdit)
    {
        VisitId = row.VisitId,
        Told = row.Told,
        SummaryId = row.SummaryId,
        SummaryDigest = row.SummaryDigest,
    };
}
