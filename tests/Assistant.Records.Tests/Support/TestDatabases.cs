using Assistant.Records.Storage.Postgres;
using Npgsql;

namespace Assistant.Records.Tests.Support;

/// <summary>One PostgreSQL for all tests of this run, and in it a database for each: copied from one that is up to date.</summary>
internal static class TestDatabases
{
    private static readonly SemaphoreSlim OneCopy = new(1, 1);
    private static readonly Lazy<Task<PostgresCluster>> Cluster = new(StartAsync);
    private static int made;

    /// <returns>The connection string of a new database of records.</returns>
    public static async Task<string> NewAsync()
    {
        var cluster = await Cluster.Value;
        var name = $"records_{Interlocked.Increment(ref made)}";

        // A database that is copied may have no visitors.
        await OneCopy.WaitAsync();
        try
        {
            await RunAsync(cluster.ConnectionTo("postgres"), $"CREATE DATABASE {name} TEMPLATE up_to_date");
        }
        finally
        {
            OneCopy.Release();
        }

        return cluster.ConnectionTo(name);
    }

    /// <returns>The connection string of a database with nothing in it.</returns>
    public static async Task<string> NewEmptyAsync()
    {
        var cluster = await Cluster.Value;
        var name = $"empty_{Interlocked.Increment(ref made)}";
        await RunAsync(cluster.ConnectionTo("postgres"), $"CREATE DATABASE {name}");
        return cluster.ConnectionTo(name);
    }

    public static async Task RunAsync(string connection, string sql)
    {
        await using var line = new NpgsqlConnection($"{connection};Pooling=false");
        await line.OpenAsync();
        await using var command = new NpgsqlCommand(sql, line);
        await command.ExecuteNonQueryAsync();
    }

    private static async Task<PostgresCluster> StartAsync()
    {
        // Nothing here outlives the run: what the disk holds is tested with a cluster that waits for it.
        var cluster = await PostgresCluster.StartNewAsync("fsync=off", "synchronous_commit=off");
        AppDomain.CurrentDomain.ProcessExit += (_, _) => cluster.DisposeAsync().AsTask().GetAwaiter().GetResult();
        await RunAsync(cluster.ConnectionTo("postgres"), "CREATE DATABASE up_to_date");
        await PostgresRecords.Of($"{cluster.ConnectionTo("up_to_date")};Pooling=false").OpenAsync();
        return cluster;
    }
}
