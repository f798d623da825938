using System.Data.Common;
using System.Text;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace Assistant.Records.Tests.Support;

/// <summary>A log in a database of its own, with a folder beside it that is gone when disposed.</summary>
internal sealed class TemporaryRecords : IAsyncDisposable
{
    private TemporaryRecords(string? server, IInterceptor[] interceptors)
    {
        Server = server;
        Database = server is null ? new SqliteRecords(Path, readOnly: false, interceptors) : PostgresRecords.Of(server, interceptors);
    }

    public IRecordsDatabase Database { get; }

    /// <summary>The connection string where a server holds them, or null.</summary>
    public string? Server { get; }

    public string Folder { get; } = Directory.CreateTempSubdirectory("coldwalk-").FullName;

    /// <summary>The file of the embedded store.</summary>
    public string Path => System.IO.Path.Combine(Folder, "records.db");

    public EventLog Log { get; private set; } = null!;

    public static Task<TemporaryRecords> OpenAsync(params IInterceptor[] interceptors) => OpenAsync(Store.Sqlite, interceptors);

    public static async Task<TemporaryRecords> OpenAsync(Store store, params IInterceptor[] interceptors)
    {
        var records = new TemporaryRecords(store == Store.Postgres ? await TestDatabases.NewAsync() : null, interceptors);
        records.Log = await EventLog.OpenAsync(records.Database);
        return records;
    }

    /// <summary>The same records as another program has them.</summary>
    public IRecordsDatabase Another() => Server is null ? new SqliteRecords(Path) : PostgresRecords.Of(Server);

    /// <summary>Changes the database behind the log's back.</summary>
    public void Tamper(string sql) => Run(sql, command => command.ExecuteNonQuery());

    public TValue Scalar<TValue>(string sql) => Run(sql, command => (TValue)command.ExecuteScalar()!);

    /// <summary>True where the text stands anywhere: in a byte of the store's files, or in any row of the server's tables.</summary>
    public bool Holds(string text) => Server is null
        ? Directory.EnumerateFiles(Folder).Any(file => FileHolds(file, text))
        : Scalar<string>("SELECT string_agg(tablename, ' ') FROM pg_tables WHERE schemaname = current_schema()").Split(' ')
            .Any(table => Scalar<long>($"SELECT count(*) FROM \"{table}\" AS row WHERE row::text LIKE '%{text}%'") > 0);

    /// <summary>The next use opens the file anew.</summary>
    public static void ForgetConnections() => SqliteConnection.ClearAllPools();

    public async ValueTask DisposeAsync()
    {
        await Log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        NpgsqlConnection.ClearAllPools();
        Directory.Delete(Folder, recursive: true);
    }

    private static bool FileHolds(string file, string text)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray().AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
    }

    private TResult Run<TResult>(string sql, Func<DbCommand, TResult> run)
    {
        using DbConnection connection = Server is null
            ? new SqliteConnection($"Data Source={Path};Pooling=False;Foreign Keys=False")
            : new NpgsqlConnection($"{Server};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return run(command);
    }
}
