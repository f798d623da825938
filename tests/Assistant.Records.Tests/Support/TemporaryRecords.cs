using Assistant.Records.Log;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Assistant.Records.Tests.Support;

/// <summary>A log in a folder of its own, gone when disposed.</summary>
internal sealed class TemporaryRecords : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-").FullName;

    private TemporaryRecords(IInterceptor[] interceptors) => Database = new(System.IO.Path.Combine(folder, "records.db"), readOnly: false, interceptors);

    public SqliteRecords Database { get; }

    public string Path => Database.Path;

    public EventLog Log { get; private set; } = null!;

    public static async Task<TemporaryRecords> OpenAsync(params IInterceptor[] interceptors)
    {
        var records = new TemporaryRecords(interceptors);
        records.Log = await EventLog.OpenAsync(records.Database);
        return records;
    }

    /// <summary>Changes the file behind the log's back.</summary>
    public void Tamper(string sql) => Run(sql, command => command.ExecuteNonQuery());

    public TValue Scalar<TValue>(string sql) => Run(sql, command => (TValue)command.ExecuteScalar()!);

    /// <summary>The next use opens the file anew.</summary>
    public static void ForgetConnections() => SqliteConnection.ClearAllPools();

    public async ValueTask DisposeAsync()
    {
        await Log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private TResult Run<TResult>(string sql, Func<SqliteCommand, TResult> run)
    {
        using var connection = new SqliteConnection($"Data Source={Path};Pooling=False;Foreign Keys=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return run(command);
    }
}
