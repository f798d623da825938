using System.Collections.Immutable;
using System.Data.Common;
using Assistant.Records.Assets;
using Assistant.Records.Tests.Support;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Assistant.Records.Tests.Storage;

public sealed class WriteTurnsTests
{
    [Fact]
    public async Task A_write_waits_for_the_one_before_it_however_long_that_takes_and_is_not_refused()
    {
        var slow = new SlowFirstCommit();
        await using var records = await TemporaryRecords.OpenAsync(slow);
        var assets = new AssetStore(records.Database);

        var first = assets.RecordAsync(Unit("a-1"), DateTimeOffset.UnixEpoch);
        await slow.IsUnderWay;
        var appended = records.Log.AppendAsync(Invented.FirstAppend("v-1", "c-1"));
        await assets.RecordAsync(Unit("a-2"), DateTimeOffset.UnixEpoch);
        await Task.WhenAll(first, appended);

        Assert.Equal(["a-1", "a-2"], (await assets.ListAsync()).Select(a => a.Id).Order());
        Assert.NotEmpty(await records.Log.ReadAsync("v-1"));
    }

    private static Asset Unit(string id) => new(id, "an invented site", "unit", ImmutableSortedDictionary<string, string>.Empty);

    /// <summary>Holds the file longer than a connection asks for it before it gives up.</summary>
    private sealed class SlowFirstCommit : DbTransactionInterceptor
    {
        private readonly TaskCompletionSource underWay = new();

        public Task IsUnderWay => underWay.Task;

        public override async ValueTask<InterceptionResult> TransactionCommittingAsync(DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
        {
            if (underWay.TrySetResult())
            {
                await Task.Delay(TimeSpan.FromSeconds(6), cancellationToken);
            }

            return result;
        }
    }
}
