using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore.Storage;

namespace Assistant.Records.Rooms;

/// <summary>A room whose summary is being posted or changed. Until it is disposed no other program does; one that dies lets go of it.</summary>
public sealed class HeldRoom : IAsyncDisposable
{
    private readonly IRecordsDatabase database;
    private readonly RecordsContext context;
    private readonly IDbContextTransaction? hold;
    private readonly RoomRow row;

    private HeldRoom(IRecordsDatabase database, RecordsContext context, IDbContextTransaction? hold, RoomRow row)
    {
        (this.database, this.context, this.hold, this.row) = (database, context, hold, row);
        Room = RoomStore.Read(row);
    }

    public Room Room { get; }

    /// <summary>The summary stands in that post and says what has that digest.</summary>
    public Task SummedUpAsync(string postId, string digest, CancellationToken cancellation = default) => database.InTurnAsync(() => database.ExplainAsync(async () =>
    {
        (row.SummaryId, row.SummaryDigest) = (postId, digest);
        await context.SaveChangesAsync(cancellation);
        await (hold?.CommitAsync(cancellation) ?? Task.CompletedTask);
        return 0;
    }), cancellation);

    public ValueTask DisposeAsync() => context.DisposeAsync();

    /// <summary>Holds the room; null where another does, or there is none any more.</summary>
    public static Task<HeldRoom?> TakeAsync(IRecordsDatabase database, string channel, string conversation, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(database);
        return database.ExplainAsync(async () =>
        {
            var context = database.NewContext();
            try
            {
                var hold = context.HasManyWriters ? await context.Database.BeginTransactionAsync(cancellation) : null;
                if (await context.HoldRoomAsync(channel, conversation, cancellation) is { } row)
                {
                    return new HeldRoom(database, context, hold, row);
                }
            }
            catch
            {
                await context.DisposeAsync();
                throw;
            }

            await context.DisposeAsync();
            return null;
        });
    }
}
