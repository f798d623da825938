using System.Collections.Concurrent;
using Assistant.Records.Log;
using Microsoft.Data.Sqlite;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// The questions of every turn on connections that are kept open with their statements prepared: to open one, and to have the question
/// worked out anew, costs ten times the answer.
/// </summary>
internal sealed class KeptLookups(IRecordsDatabase database, string connectionString) : ITurnLookups
{
    private readonly ConcurrentStack<Line> idle = new();

    public Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation) =>
        AskAsync(line => line.CurrentVisit(channel, conversation), cancellation);

    public Task<bool> HasFirmsAsync(CancellationToken cancellation) => AskAsync(line => line.HasFirms(), cancellation);

    public void Dispose()
    {
        while (idle.TryPop(out var line))
        {
            line.Dispose();
        }
    }

    // As many lines as ask at the same moment, which are as many as there are threads. One that failed is not kept.
    private Task<TResult> AskAsync<TResult>(Func<Line, TResult> ask, CancellationToken cancellation) => database.ExplainAsync(() =>
    {
        cancellation.ThrowIfCancellationRequested();
        var line = idle.TryPop(out var kept) ? kept : new(connectionString);
        try
        {
            var answer = ask(line);
            idle.Push(line);
            return Task.FromResult(answer);
        }
        catch
        {
            line.Dispose();
            throw;
        }
    });

    private sealed class Line : IDisposable
    {
        private readonly SqliteConnection connection;
        private readonly PreparedStatement current;
        private readonly PreparedStatement firm;

        public Line(string connectionString)
        {
            connection = new(connectionString);
            connection.Open();
            current = new(connection, null, "SELECT v.id, v.version, v.opened_at, v.closed_at FROM conversations c JOIN visits v ON v.id = c.visit_id WHERE c.channel = @0 AND c.conversation = @1", 2);
            firm = new(connection, null, "SELECT id FROM firms LIMIT 1", 0);
        }

        public CurrentVisit? CurrentVisit(string channel, string conversation) => current.First(
            row => new CurrentVisit(row.GetString(0), row.GetInt32(1), UtcText.Read(row.GetString(2)), row.IsDBNull(3) ? null : UtcText.Read(row.GetString(3))),
            channel,
            conversation);

        public bool HasFirms() => firm.First(row => row.GetString(0)) is not null;

        public void Dispose()
        {
            current.Dispose();
            firm.Dispose();
            connection.Dispose();
        }
    }
}
