using Assistant.Records.Chain;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Storage;

/// <summary>A PostgreSQL that is gone, foreign, newer or named wrongly: one line for people, and nothing acknowledged is lost.</summary>
public sealed class PostgresGoneTests
{
    [Fact]
    public async Task While_the_database_is_gone_a_message_is_refused_in_one_line_and_once_it_is_back_the_same_message_is_taken()
    {
        await using var cluster = await PostgresCluster.StartNewAsync();
        await TestDatabases.RunAsync(cluster.ConnectionTo("postgres"), "CREATE DATABASE coldwalk");
        await using var log = await EventLog.OpenAsync(PostgresRecords.Of(cluster.ConnectionTo("coldwalk")));
        using var service = new ConversationService(log, new CountingEngine());
        for (var i = 1; i <= 3; i++)
        {
            await service.HandleAsync(Invented.Message($"m-{i}"));
        }

        await cluster.StopAsync(atOnce: true);
        var refused = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Assert.ThrowsAsync<RecordsException>(() => service.HandleAsync(Invented.Message("m-4")))));
        Assert.All(refused, r => Assert.Equal(RecordsFault.Unreachable, r.Fault));
        Assert.EndsWith("does not answer just now. Say it again in a moment: what was stored is kept, and nothing is taken twice.", refused[0].Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused[0].Message);

        await cluster.StartAsync();
        Assert.Equal("38 after 4", (await service.HandleAsync(Invented.Message("m-4"))).Say.Full);
        Assert.Equal("38 after 3", (await service.HandleAsync(Invented.Message("m-3"))).Say.Full);
        var verdict = await new ChainVerifier(log.Database).VerifyAsync();
        Assert.Equal((true, 5), (verdict.Holds, verdict.Events));
    }

    [Fact]
    public async Task Another_programs_tables_are_named_and_left_alone()
    {
        var connection = await TestDatabases.NewEmptyAsync();
        await TestDatabases.RunAsync(connection, "CREATE TABLE recipes (name text)");

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(PostgresRecords.Of(connection)));

        Assert.Equal(RecordsFault.Foreign, refused.Fault);
        await TestDatabases.RunAsync(connection, "DROP TABLE recipes");
    }

    [Fact]
    public async Task A_database_of_a_later_release_is_named_and_left_alone()
    {
        var connection = await TestDatabases.NewAsync();
        await TestDatabases.RunAsync(connection, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('29990101000000_Later', '99.0.0')");

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(PostgresRecords.Of(connection)));

        Assert.Equal(RecordsFault.Newer, refused.Fault);
    }

    [Theory]
    [InlineData("records.db")]
    [InlineData("Host=")]
    [InlineData("Server=x;Passwort=secret")]
    public void What_is_no_connection_string_is_refused_without_being_repeated(string told)
    {
        var refused = Assert.Throws<RecordsException>(() => PostgresRecords.Of(told));

        Assert.Equal("The store is told as a connection string: Host=...;Database=...;Username=..., or sqlite for the file in the data folder.", refused.Message);
    }

    [Fact]
    public async Task A_database_that_is_not_there_is_named()
    {
        var connection = (await TestDatabases.NewEmptyAsync()).Replace("Database=empty", "Database=missing", StringComparison.Ordinal);

        var refused = await Assert.ThrowsAsync<RecordsException>(() => EventLog.OpenAsync(PostgresRecords.Of(connection)));

        Assert.Contains("There is no such database: the database missing_", refused.Message, StringComparison.Ordinal);
    }
}
