using System.Data.Common;
using Assistant.Records.Log;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace Assistant.Records.Storage.Postgres;

/// <summary>The records in a PostgreSQL database that several programs share.</summary>
public sealed class PostgresRecords : IRecordsDatabase
{
    /// <summary>Whoever waits for an answer is told soon that there is none. In seconds; a connection setting of its own goes before it.</summary>
    private const int UsualPatience = 5;

    /// <summary>A server takes a hundred connections unless told otherwise: two programs fit in. A connection setting of its own goes before it.</summary>
    private const int UsualPool = 40;

    /// <summary>
    /// The statements a line keeps prepared: to have one parsed and planned anew costs the server more than the row it writes. A pool of lines
    /// between program and server that does not keep statements needs the connection setting "Max Auto Prepare=0".
    /// </summary>
    private const int UsualStatements = 60;

    private readonly string connection;
    private readonly string where;
    private readonly string sender = Guid.NewGuid().ToString("N");
    private readonly DbContextOptions<PostgresContext> options;
    private readonly Lazy<CompiledLookups> lookups;

    private PostgresRecords(NpgsqlConnectionStringBuilder settings, IInterceptor[] interceptors)
    {
        connection = settings.ToString();
        where = $"the database {settings.Database ?? settings.Username} on {settings.Host}";
        options = new DbContextOptionsBuilder<PostgresContext>().UseNpgsql(connection).AddInterceptors(interceptors).Options;
        lookups = new(() => new(this, connection));
    }

    /// <param name="connection">Npgsql's connection string, such as "Host=db;Database=coldwalk;Username=coldwalk"; the password may stand in a PGPASSFILE.</param>
    /// <param name="interceptors">Watchers of the connection.</param>
    /// <exception cref="RecordsException">It is no connection string, or names no host.</exception>
    public static PostgresRecords Of(string connection, params IInterceptor[] interceptors)
    {
        try
        {
            var told = new DbConnectionStringBuilder { ConnectionString = connection };
            var settings = new NpgsqlConnectionStringBuilder(connection) { ApplicationName = "coldwalk" };
            if (!string.IsNullOrWhiteSpace(settings.Host))
            {
                settings.Timeout = told.ContainsKey("Timeout") ? settings.Timeout : UsualPatience;
                settings.CommandTimeout = told.ContainsKey("Command Timeout") ? settings.CommandTimeout : 2 * UsualPatience;
                settings.MaxAutoPrepare = told.ContainsKey("Max Auto Prepare") ? settings.MaxAutoPrepare : UsualStatements;
                settings.AutoPrepareMinUsages = told.ContainsKey("Auto Prepare Min Usages") ? settings.AutoPrepareMinUsages : 2;

                // Nothing is left behind on a line (what listens, and what holds a lock, has one of its own): to have it cleared costs seven statements.
                settings.NoResetOnClose = true;
                settings.MaxPoolSize = told.ContainsKey("Maximum Pool Size") ? settings.MaxPoolSize : UsualPool;
                return new(settings, interceptors);
            }
        }
        catch (ArgumentException)
        {
            // Told below, without what may be a password.
        }

        throw new RecordsException(RecordsFault.Refused, "The store is told as a connection string: Host=...;Database=...;Username=..., or sqlite for the file in the data folder.");
    }

    public int WorkersAtOnce => 4;

    public RecordsContext NewContext() => new PostgresContext(options) { Sender = sender };

    ITurnLookups IRecordsDatabase.Lookups => lookups.Value;

    Task<TResult> IRecordsDatabase.InTurnAsync<TResult>(Func<Task<TResult>> write, CancellationToken cancellation) => write();

    public async Task OpenAsync(CancellationToken cancellation = default)
    {
        try
        {
            // However long another program, or this one, needs to bring many rows up to date.
            await using var line = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connection) { CommandTimeout = 0, Pooling = false }.ToString());
            await line.OpenAsync(cancellation);

            // Programs that start at the same time bring the database up to date one after another.
            await RunAsync(line, "SELECT pg_advisory_lock(hashtextextended('coldwalk migrations', 0))", cancellation);
            try
            {
                await BringUpToDateAsync(line, cancellation);
            }
            finally
            {
                await RunAsync(line, "SELECT pg_advisory_unlock(hashtextextended('coldwalk migrations', 0))", CancellationToken.None);
            }
        }
        catch (Exception failure) when (failure is not RecordsException && Explain(failure) is { } explained)
        {
            throw explained;
        }
    }

    public RecordsException? Explain(Exception failure) => PostgresFaults.Explain(failure, where);

    public bool IsAlreadyThere(Exception failure) => PostgresFaults.IsAlreadyThere(failure);

    public bool IsLostRace(Exception failure) => PostgresFaults.IsLostRace(failure);

    public Task ListenAsync(Action<VisitGrew> told, CancellationToken cancellation) => VisitNews.ListenAsync(connection, sender, told, cancellation);

    // The rows are gone from the tables; the write-ahead log and backups lose them as they are recycled.
    public async Task ScrubAsync(CancellationToken cancellation = default)
    {
        await using var context = NewContext();
        context.Database.SetCommandTimeout(0);
        await context.Database.ExecuteSqlRawAsync("VACUUM events, messages, conversations, outbox, inbox, people, channel_identities", cancellation);
    }

    private async Task BringUpToDateAsync(NpgsqlConnection line, CancellationToken cancellation)
    {
        await using var context = NewContext();
        var known = context.Database.GetMigrations().ToList();
        var tables = await TextsAsync(line, "SELECT tablename FROM pg_tables WHERE schemaname = current_schema()", cancellation);
        var isOurs = tables.Contains("__EFMigrationsHistory");
        if (tables.Count > 0 && !isOurs)
        {
            throw Foreign();
        }

        var applied = isOurs ? await TextsAsync(line, "SELECT \"MigrationId\" FROM \"__EFMigrationsHistory\"", cancellation) : [];
        if (applied.Except(known).Any())
        {
            throw applied.Intersect(known).Any() ? Newer() : Foreign();
        }

        if (applied.Count < known.Count)
        {
            context.Database.SetCommandTimeout(0);
            await context.Database.MigrateAsync(cancellation);
        }
    }

    private static async Task RunAsync(NpgsqlConnection line, string sql, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(sql, line);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private static async Task<List<string>> TextsAsync(NpgsqlConnection line, string query, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(query, line);
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        List<string> texts = [];
        while (await reader.ReadAsync(cancellation))
        {
            texts.Add(reader.GetString(0));
        }

        return texts;
    }

    private RecordsException Newer() =>
        new(RecordsFault.Newer, $"The records in {where} were written by a later release of Coldwalk. Update this program; nothing was changed.");

    private RecordsException Foreign() =>
        new(RecordsFault.Foreign, $"There are tables in {where}, but not those of Coldwalk. Name another database; nothing was changed.");
}
