using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// Sets every connection so that a commit is on the disk when it returns (write-ahead log, synchronous FULL), readers do not
/// hold up the writer, and erased content is overwritten.
/// </summary>
internal sealed class SqlitePragmas : DbConnectionInterceptor
{
    private const string Pragmas =
        "PRAGMA busy_timeout = 5000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
