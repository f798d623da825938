using System.Data.Common;
using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using SQLitePCL;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// Sets every connection so that a commit is on the disk when it returns (write-ahead log, synchronous FULL), readers do not
/// hold up the writer, and erased content is overwritten. The write-ahead log is copied into the tables in a commit only when
/// it has 64 MB: <see cref="Checkpoints"/> does it before.
/// </summary>
internal sealed class SqlitePragmas : DbConnectionInterceptor
{
    private const string Pragmas =
        "PRAGMA busy_timeout = 5000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON; PRAGMA wal_autocheckpoint = 16000;";

    // What was set stays with SQLite's own connection, which is kept and opened again many times a turn.
    private readonly ConditionalWeakTable<sqlite3, object> set = [];

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        if (IsSet(connection))
        {
            return;
        }

        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
        Keep(connection);
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        if (IsSet(connection))
        {
            return;
        }

        await SetAsync(connection, cancellationToken);
        Keep(connection);
    }

    /// <summary>Sets a connection that the model does not open.</summary>
    public static async Task SetAsync(DbConnection connection, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private bool IsSet(DbConnection connection) => connection is SqliteConnection { Handle: { } handle } && set.TryGetValue(handle, out _);

    private void Keep(DbConnection connection)
    {
        if (connection is SqliteConnection { Handle: { } handle })
        {
            set.TryAdd(handle, this);
        }
    }
}
