using System.Data;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// The tables of a new file as one script: what all migrations together make of an empty one (a test holds the two alike). Running the
/// migrations themselves takes longer than all the rest of a first start.
/// </summary>
public static partial class SqliteSchema
{
    private static readonly Lazy<string> Script = new(Read);

    /// <summary>The migrations of this release, oldest first.</summary>
    public static IReadOnlyList<string> Migrations => [.. MigrationRow().Matches(Script.Value).Select(m => m.Groups["id"].Value)];

    /// <summary>Makes the tables, all or none; where another program made them meanwhile they stay as they are.</summary>
    internal static async Task CreateAsync(SqliteConnection connection, CancellationToken cancellation)
    {
        // Not deferred: of two programs that start on one empty file the second waits here and then finds the tables.
        await using var transaction = connection.BeginTransaction(IsolationLevel.Serializable, deferred: false);
        await using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT COUNT(*) FROM sqlite_master WHERE type = 'table'";
        if (await command.ExecuteScalarAsync(cancellation) is 0L)
        {
            command.CommandText = Script.Value;
            await command.ExecuteNonQueryAsync(cancellation);
        }

        await transaction.CommitAsync(cancellation);
    }

    private static string Read()
    {
        using var stream = typeof(SqliteSchema).Assembly.GetManifestResourceStream("schema/sqlite.sql")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"INSERT INTO ""__EFMigrationsHistory"" \(""MigrationId"", ""ProductVersion""\)\s+VALUES \('(?<id>[^']+)'")]
    private static partial Regex MigrationRow();
}
