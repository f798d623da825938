using Assistant.Records.Log;
using Assistant.Records.Storage.Rows;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// The tables of the log by statements prepared once a transaction and run row by row: in a file a row costs a few microseconds, and
/// tracking it would cost many times that.
/// </summary>
internal sealed class PreparedTables : ILogTables
{
    private readonly RecordsContext context;
    private readonly SqliteConnection connection;
    private readonly SqliteTransaction transaction;
    private readonly PreparedStatement visit;
    private readonly PreparedStatement reply;
    private readonly PreparedStatement moved;
    private readonly PreparedInsert<EventRow> happened;
    private readonly PreparedInsert<MessageRow> message;

    public PreparedTables(RecordsContext context)
    {
        this.context = context;
        connection = (SqliteConnection)context.Database.GetDbConnection();
        transaction = (SqliteTransaction)context.Database.CurrentTransaction!.GetDbTransaction();
        visit = Statement("SELECT site, asset_id, opened_at, closed_at, version, head_hash FROM visits WHERE id = @0", 1);
        reply = Statement("SELECT reply FROM messages WHERE channel = @0 AND message_id = @1", 2);
        moved = Statement("UPDATE visits SET version = @0, head_hash = @1, closed_at = @2 WHERE id = @3", 4);
        happened = new(context, connection, transaction);
        message = new(context, connection, transaction);
    }

    public Task<VisitRow?> VisitAsync(string id) => Task.FromResult(visit.First(
        row => new VisitRow
        {
            Id = id,
            Site = row.GetString(0),
            AssetId = row.IsDBNull(1) ? null : row.GetString(1),
            OpenedAt = UtcText.Read(row.GetString(2)),
            ClosedAt = row.IsDBNull(3) ? null : UtcText.Read(row.GetString(3)),
            Version = row.GetInt32(4),
            HeadHash = row.GetFieldValue<byte[]>(5),
        },
        id));

    public Task<string?> ReplyAsync(string channel, string messageId) => Task.FromResult(reply.First(row => row.GetString(0), channel, messageId));

    public Task<string?> VisitOfAsync(string channel, string conversation)
    {
        using var on = Statement("SELECT visit_id FROM conversations WHERE channel = @0 AND conversation = @1", 2);
        return Task.FromResult(on.First(row => row.GetString(0), channel, conversation));
    }

    public Task AddAsync(VisitRow visit)
    {
        using var insert = new PreparedInsert<VisitRow>(context, connection, transaction);
        insert.Run(visit);
        return Task.CompletedTask;
    }

    public Task AddAsync(EventRow happened)
    {
        this.happened.Run(happened);
        return Task.CompletedTask;
    }

    public Task AddAsync(MessageRow message)
    {
        this.message.Run(message);
        return Task.CompletedTask;
    }

    public Task TurnAsync(string channel, string conversation, string visitId)
    {
        using var turn = Statement("INSERT INTO conversations (channel, conversation, visit_id) VALUES (@0, @1, @2) ON CONFLICT (channel, conversation) DO UPDATE SET visit_id = excluded.visit_id", 3);
        turn.Run(channel, conversation, visitId);
        return Task.CompletedTask;
    }

    public Task MovedAsync(VisitRow visit)
    {
        moved.Run(visit.Version, visit.HeadHash, visit.ClosedAt is { } closed ? UtcText.Write(closed) : null, visit.Id);
        return Task.CompletedTask;
    }

    public Task EndAsync() => context.ChangeTracker.HasChanges() ? context.SaveChangesAsync() : Task.CompletedTask;

    public ValueTask DisposeAsync()
    {
        visit.Dispose();
        reply.Dispose();
        moved.Dispose();
        happened.Dispose();
        message.Dispose();
        return ValueTask.CompletedTask;
    }

    private PreparedStatement Statement(string sql, int values) => new(connection, transaction, sql, values);
}
