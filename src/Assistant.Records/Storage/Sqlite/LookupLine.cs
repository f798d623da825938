using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Cylinders;
using Assistant.Records.Log;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>A connection that is kept open for questions, with their statements prepared when they are first asked. For one asker at a time.</summary>
public sealed class LookupLine : IDisposable
{
    /// <summary>Asked at every opening. Its values: opened since, opened until, each null for all.</summary>
    public const string CylinderEvents =
        $"""
        SELECT e.visit_id, e.number, e.kind, e.body, e.personal, v.asset_id FROM events e JOIN visits v ON v.id = e.visit_id
        WHERE e.kind IN ('{EventJson.CylinderUsedKind}', '{EventJson.EventWithdrawnKind}') AND (?1 IS NULL OR v.opened_at >= ?1) AND (?2 IS NULL OR v.opened_at <= ?2)
        ORDER BY e.visit_id, e.number
        """;

    private const string CurrentVisits =
        "SELECT v.id, v.version, v.opened_at, v.closed_at FROM conversations c JOIN visits v ON v.id = c.visit_id WHERE c.channel = ? AND c.conversation = ?";

    private const string OpenVisitsOf =
        """
        SELECT c.conversation, v.id, v.site, v.opened_at FROM conversations c JOIN visits v ON v.id = c.visit_id
        WHERE c.channel = ? AND v.closed_at IS NULL ORDER BY v.opened_at DESC LIMIT ?
        """;

    /// <summary>How long a question waits where the file is held, in milliseconds.</summary>
    private const int Patience = 5000;

    private readonly SqliteConnection connection;
    private readonly Lazy<PreparedStatement> current;
    private readonly Lazy<PreparedStatement> firm;
    private readonly Lazy<PreparedStatement> open;
    private readonly Lazy<PreparedStatement> assets;
    private readonly Lazy<PreparedStatement> cylinders;

    /// <exception cref="SqliteException">The file can not be opened.</exception>
    internal LookupLine(string connectionString)
    {
        connection = new(connectionString);
        connection.Open();
        raw.sqlite3_busy_timeout(connection.Handle, Patience);
        current = new(() => new(connection, CurrentVisits));
        firm = new(() => new(connection, "SELECT id FROM firms LIMIT 1"));
        open = new(() => new(connection, OpenVisitsOf));
        assets = new(() => new(connection, "SELECT id, site, unit FROM assets ORDER BY site, unit"));
        cylinders = new(() => new(connection, CylinderEvents));
    }

    internal CurrentVisit? CurrentVisit(string channel, string conversation) => current.Value.First(
        row => new CurrentVisit(row.Text(0), row.Number(1), UtcText.Read(row.Text(2)), row.TextOrNull(3) is { } closed ? UtcText.Read(closed) : null),
        channel,
        conversation);

    internal bool HasFirms() => firm.Value.First(row => row.Text(0)) is not null;

    internal IReadOnlyList<OpenVisit> OpenVisits(string channel, int most) => open.Value.All(
        row => new OpenVisit(row.Text(0), row.Text(1), row.Text(2), UtcText.Read(row.Text(3))), channel, most);

    internal IReadOnlyList<AssetName> Assets() => assets.Value.All(row => new AssetName(row.Text(0), row.Text(1), row.Text(2)));

    internal IReadOnlyList<CylinderRow> CylinderRows(DateTimeOffset? since, DateTimeOffset? until) => cylinders.Value.All(
        row => new CylinderRow(row.Text(0), row.Number(1), row.Text(2), row.Text(3), row.TextOrNull(4), row.TextOrNull(5)),
        since is { } from ? UtcText.Write(from) : null,
        until is { } to ? UtcText.Write(to) : null);

    public void Dispose()
    {
        foreach (var statement in new[] { current, firm, open, assets, cylinders }.Where(s => s.IsValueCreated))
        {
            statement.Value.Dispose();
        }

        connection.Dispose();
    }
}
