using Assistant.Records.Log;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>The records in one SQLite file.</summary>
/// <param name="path">The file; it is made where there is none, its folder must exist.</param>
/// <param name="readOnly">True to read an old or foreign-owned file without ever writing to it.</param>
/// <param name="interceptors">Further watchers of the connection, after the one that sets it up.</param>
public sealed class SqliteRecords(string path, bool readOnly = false, params IInterceptor[] interceptors) : IRecordsDatabase
{
    // Kept for the next one to use: making a context costs a turn more than its query. And made when one is first wanted: a start is over before.
    private readonly Lazy<PooledDbContextFactory<RecordsContext>> contexts = new(() => new(new DbContextOptionsBuilder<RecordsContext>()
        .UseSqlite(ConnectionString(path, readOnly).ToString())
        .AddInterceptors([new SqlitePragmas(), .. interceptors])
        .Options));

    private readonly WriteTurns turns = new();
    private readonly Checkpoints checkpoints = new(ConnectionString(path, readOnly).ToString());

    private KeptLookups? lookups;

    public string Path { get; } = path;

    public int WorkersAtOnce => 1;

    public RecordsContext NewContext() => contexts.Value.CreateDbContext();

    ITurnLookups IRecordsDatabase.Lookups => lookups ?? Interlocked.CompareExchange(ref lookups, new(this, ConnectionString(Path, readOnly).ToString()), null) ?? lookups;

    async Task<TResult> IRecordsDatabase.InTurnAsync<TResult>(Func<Task<TResult>> write, CancellationToken cancellation)
    {
        var result = await turns.RunAsync(write, cancellation);
        checkpoints.Committed();
        return result;
    }

    public async Task OpenAsync(CancellationToken cancellation = default)
    {
        try
        {
            var known = SqliteSchema.Migrations;
            var applied = await AppliedAsync(cancellation);
            if (applied.Except(known).Any())
            {
                throw applied.Intersect(known).Any() ? Newer() : Foreign();
            }

            if (applied.Count == 0)
            {
                await using var connection = new SqliteConnection(ConnectionString(Path, readOnly).ToString());
                await connection.OpenAsync(cancellation);
                await SqlitePragmas.SetAsync(connection, cancellation);
                await SqliteSchema.CreateAsync(connection, cancellation);
            }
            else if (applied.Count < known.Count)
            {
                await using var context = NewContext();
                await context.Database.MigrateAsync(cancellation);
            }
        }
        catch (Exception failure) when (failure is not RecordsException && Explain(failure) is { } explained)
        {
            throw explained;
        }
    }

    public RecordsException? Explain(Exception failure) => SqliteFaults.Explain(failure, Path);

    public bool IsAlreadyThere(Exception failure) => SqliteFaults.IsAlreadyThere(failure);

    public bool IsLostRace(Exception failure) => failure is DbUpdateConcurrencyException || IsAlreadyThere(failure);

    public Task ListenAsync(Action<VisitGrew> told, CancellationToken cancellation) => Task.CompletedTask;

    public async Task ScrubAsync(CancellationToken cancellation = default)
    {
        await using var context = NewContext();
        // The write-ahead log still holds the pages as they were.
        await context.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE);", cancellation);
    }

    /// <summary>The migrations the file has seen; looked up without the pragmas, so that a foreign file is left as it is.</summary>
    private async Task<List<string>> AppliedAsync(CancellationToken cancellation)
    {
        if (new FileInfo(Path) is not { Exists: true, Length: > 0 })
        {
            return [];
        }

        var unpooled = ConnectionString(Path, readOnly);
        unpooled.Pooling = false;
        await using var connection = new SqliteConnection(unpooled.ToString());
        await connection.OpenAsync(cancellation);
        var tables = await TextsAsync(connection, "SELECT name FROM sqlite_master WHERE type = 'table'", cancellation);
        return tables switch
        {
            [] => [],
            _ when !tables.Contains("__EFMigrationsHistory") => throw Foreign(),
            _ => await TextsAsync(connection, "SELECT MigrationId FROM __EFMigrationsHistory", cancellation),
        };
    }

    private static SqliteConnectionStringBuilder ConnectionString(string path, bool readOnly) =>
        new() { DataSource = path, DefaultTimeout = 5, Mode = readOnly ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWriteCreate };

    private static async Task<List<string>> TextsAsync(SqliteConnection connection, string query, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = query;
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        List<string> texts = [];
        while (await reader.ReadAsync(cancellation))
        {
            texts.Add(reader.GetString(0));
        }

        return texts;
    }

    private RecordsException Newer() =>
        new(RecordsFault.Newer, $"The records in {Path} were written by a later release of Coldwalk. Update this program; nothing was changed.");

    private RecordsException Foreign() =>
        new(RecordsFault.Foreign, $"{Path} is a database, but not a record file of Coldwalk. Name another file; nothing was changed.");
}
