using Assistant.App.Commands;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Storage.Sqlite;

namespace Assistant.App.Hosting;

/// <summary>Which database holds the records: a file in the data folder, or a PostgreSQL that several programs share.</summary>
public sealed class RecordsStore
{
    private const string EmbeddedName = "sqlite";

    private readonly string? connection;

    private RecordsStore(string? connection) => this.connection = connection;

    /// <summary>The file in the data folder.</summary>
    public static RecordsStore Embedded { get; } = new(null);

    public bool IsEmbedded => connection is null;

    /// <summary>The store as it was told; else COLDWALK_STORE, else what stands in the file COLDWALK_STORE_FILE names, else the file in the data folder.</summary>
    /// <param name="told">"sqlite" or a PostgreSQL connection string; null where the command line says nothing.</param>
    /// <exception cref="CommandFailure">The file can not be read.</exception>
    public static RecordsStore Read(string? told)
    {
        var named = Text(told) ?? Text(Secrets.Read("COLDWALK_STORE"));
        return named is null || named.Equals(EmbeddedName, StringComparison.OrdinalIgnoreCase) ? Embedded : new(named);
    }

    /// <param name="file">The file of the embedded store.</param>
    /// <exception cref="RecordsException">The connection string can not be read.</exception>
    public IRecordsDatabase Of(string file) => connection is null ? new SqliteRecords(file) : PostgresRecords.Of(connection);

    private static string? Text(string? told) => string.IsNullOrWhiteSpace(told) ? null : told.Trim();
}
