using Assistant.Records.Log;
using Assistant.Records.Storage.Rows;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// The tables of the log by statements prepared once and run row by row: in a file a row costs a few microseconds, and tracking it would cost
/// many times that. They keep the context's connection open, and are good for one transaction of it after another.
/// </summary>
internal sealed class PreparedTables : ILogTables, IDisposable
{
    private readonly RecordsContext context;
    private readonly PreparedStatement visit;
    private readonly PreparedStatement reply;
    private readonly PreparedStatement moved;
    private readonly PreparedStatement on;
    private readonly PreparedStatement turned;
    private readonly PreparedStatement bound;
    private readonly PreparedInsert<VisitRow> opened;
    private readonly PreparedInsert<EventRow> happened;
    private readonly PreparedInsert<MessageRow> message;

    public PreparedTables(RecordsContext context)
    {
        this.context = context;
        context.Database.OpenConnection();
        var connection = (SqliteConnection)context.Database.GetDbConnection();
        visit = new(connection, "SELECT site, asset_id, opened_at, closed_at, version, head_hash FROM visits WHERE id = ?");
        reply = new(connection, "SELECT reply FROM messages WHERE channel = ? AND message_id = ?");
        moved = new(connection, "UPDATE visits SET version = ?, head_hash = ?, closed_at = ? WHERE id = ?");
        on = new(connection, "SELECT visit_id FROM conversations WHERE channel = ? AND conversation = ?");
        turned = new(connection, "INSERT INTO conversations (channel, conversation, visit_id) VALUES (?, ?, ?) ON CONFLICT (channel, conversation) DO UPDATE SET visit_id = excluded.visit_id");
        bound = new(connection, "UPDATE rooms SET visit_id = ?1, told = 0, summary_id = NULL, summary_digest = NULL WHERE channel = ?2 AND conversation = ?3 AND visit_id IS NOT ?1");
        opened = new(context, connection);
        happened = new(context, connection);
        message = new(context, connection);
    }

    public Task<VisitRow?> VisitAsync(string id) => Task.FromResult(visit.First(
        row => new VisitRow
        {
            Id = id,
            Site = row.Text(0),
            AssetId = row.TextOrNull(1),
            OpenedAt = UtcText.Read(row.Text(2)),
            ClosedAt = row.TextOrNull(3) is { } closed ? UtcText.Read(closed) : null,
            Version = row.Number(4),
            HeadHash = row.Bytes(5),
        },
        id));

    public Task<string?> ReplyAsync(string channel, string messageId) => Task.FromResult(reply.First(row => row.Text(0), channel, messageId));

    public Task<string?> VisitOfAsync(string channel, string conversation) => Task.FromResult(on.First(row => row.Text(0), channel, conversation));

    public Task AddAsync(VisitRow visit)
    {
        opened.Run(visit);
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
        turned.Run(channel, conversation, visitId);
        bound.Run(visitId, channel, conversation);
        return Task.CompletedTask;
    }

    public Task MovedAsync(VisitRow visit)
    {
        moved.Run(visit.Version, visit.HeadHash, visit.ClosedAt is { } closed ? UtcText.Write(closed) : null, visit.Id);
        return Task.CompletedTask;
    }

    public Task EndAsync() => context.ChangeTracker.HasChanges() ? context.SaveChangesAsync() : Task.CompletedTask;

    public void Dispose()
    {
        foreach (var statement in new IDisposable[] { visit, reply, moved, on, turned, bound, opened, happened, message })
        {
            statement.Dispose();
        }

        context.Database.CloseConnection();
    }
}
