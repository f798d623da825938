using Assistant.Records.Chain;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Storage.Postgres;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Storage;

/// <summary>The written steps of a backup on PostgreSQL (deploy/README.md): taken while it is written to, restored elsewhere.</summary>
public sealed class BackupTests
{
    [Fact]
    public async Task A_copy_taken_during_the_talk_is_restored_into_an_empty_database_opens_and_its_chain_holds()
    {
        await using var records = await TemporaryRecords.OpenAsync(Store.Postgres);
        using var service = new ConversationService(records.Log, new CountingEngine());
        await service.HandleAsync(Invented.Message("m-0"));
        using var enough = new CancellationTokenSource();
        var talk = Task.Run(async () =>
        {
            for (var i = 1; !enough.IsCancellationRequested; i++)
            {
                await service.HandleAsync(Invented.Message($"m-{i}", conversation: $"c-{i % 5}"));
            }
        });
        var copy = Path.Combine(records.Folder, "coldwalk.dump");
        await PostgresTools.RunAsync("pg_dump", "-Fc", "-f", copy, records.Server!);
        await enough.CancelAsync();
        await talk;

        var elsewhere = await TestDatabases.NewEmptyAsync();
        await PostgresTools.RunAsync("pg_restore", "--no-owner", "-d", elsewhere, copy);

        await using var log = await EventLog.OpenAsync(PostgresRecords.Of(elsewhere));
        var verdict = await new ChainVerifier(log.Database).VerifyAsync();
        Assert.True(verdict.Holds, verdict.Broken?.Why);
        using var restored = new ConversationService(log, new CountingEngine());
        Assert.Equal("38 after 1", (await restored.HandleAsync(Invented.Message("m-0"))).Say.Full);
    }
}
