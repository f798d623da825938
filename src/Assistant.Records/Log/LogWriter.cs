using System.Threading.Channels;
using Assistant.Records.Storage;

namespace Assistant.Records.Log;

/// <summary>
/// The one writer: takes all appends that wait and stores them in one transaction, so that they share the wait for the disk.
/// Each is told what became of it after the commit, never before.
/// </summary>
internal sealed class LogWriter : IAsyncDisposable
{
    private const int LargestBatch = 256;

    private readonly IRecordsDatabase database;
    private readonly Channel<Pending?> queue = Channel.CreateUnbounded<Pending?>(new() { SingleReader = true });
    private readonly Task loop;
    private RecordsContext? kept;
    private long commits;
    private long appends;

    public LogWriter(IRecordsDatabase database)
    {
        this.database = database;
        loop = Task.Run(RunAsync);
    }

    public LogStatistics Statistics => new(Interlocked.Read(ref commits), Interlocked.Read(ref appends));

    public Task<AppendResult> AppendAsync(Append append)
    {
        // All waits for the one writer: what can be made beforehand is made by whoever appends.
        var pending = new Pending(PreparedAppend.Of(append), new(TaskCreationOptions.RunContinuationsAsynchronously));
        return queue.Writer.TryWrite(pending) ? pending.Done.Task : throw new ObjectDisposedException(nameof(LogWriter));
    }

    /// <summary>Makes the line ready that the first append would wait for.</summary>
    public void MakeReady() => queue.Writer.TryWrite(null);

    public async ValueTask DisposeAsync()
    {
        queue.Writer.TryComplete();
        await loop;
        if (kept is not null)
        {
            await kept.DisposeAsync();
        }
    }

    private async Task RunAsync()
    {
        while (await queue.Reader.WaitToReadAsync())
        {
            List<Pending> batch = [];
            while (batch.Count < LargestBatch && queue.Reader.TryRead(out var pending))
            {
                if (pending is not null)
                {
                    batch.Add(pending);
                }
            }

            await CommitAsync(batch);
        }
    }

    private async Task CommitAsync(List<Pending> batch)
    {
        try
        {
            var results = await database.InTurnAsync(() => StoreAsync(batch), CancellationToken.None);
            Interlocked.Increment(ref commits);
            Interlocked.Add(ref appends, batch.Count);
            foreach (var (pending, result) in batch.Zip(results))
            {
                pending.Done.SetResult(result);
            }
        }
        catch (Exception) when (batch.Count == 0)
        {
            // Nothing was to be stored: the first append finds what is wrong, and tells.
        }
        catch (Exception failure) when (batch.Count == 1 && database.IsLostRace(failure))
        {
            batch[0].Done.SetResult(new Conflict());
        }
        catch (Exception failure) when (database.Explain(failure) is { Fault: RecordsFault.Unreachable } gone)
        {
            // Whoever waits is told at once; one by one each would wait for the database again.
            batch.ForEach(pending => pending.Done.SetException(gone));
        }
        catch (Exception) when (batch.Count > 1)
        {
            // One append may spoil the transaction for all: each gets its own.
            foreach (var pending in batch)
            {
                await CommitAsync([pending]);
            }
        }
        catch (Exception failure)
        {
            batch[0].Done.SetException(database.Explain(failure) ?? failure);
        }
    }

    private async Task<List<AppendResult>> StoreAsync(List<Pending> batch)
    {
        var context = kept ?? database.NewContext();
        kept = null;
        try
        {
            var results = await StoreAsync(context, batch);
            if (!context.HasManyWriters)
            {
                // In a file the line with its statements is as good for the next batch; one that failed is not used again.
                context.ChangeTracker.Clear();
                (kept, context) = (context, null);
            }

            return results;
        }
        finally
        {
            await (context?.DisposeAsync() ?? ValueTask.CompletedTask);
        }
    }

    private static async Task<List<AppendResult>> StoreAsync(RecordsContext context, List<Pending> batch)
    {
        await using var transaction = await context.Database.BeginTransactionAsync();
        var unit = new WriteUnit(context, await context.LogTablesAsync(batch.ConvertAll(p => p.Prepared.Append)));
        List<AppendResult> results = [];
        foreach (var pending in batch)
        {
            results.Add(await unit.AddAsync(pending.Prepared));
        }

        await context.SaveChangesAsync();
        await context.TellAsync(
            [.. batch.Zip(results).Where(b => b.Second is Appended).Select(b => new VisitGrew(b.First.Prepared.Append.VisitId, ((Appended)b.Second).Version))]);
        await transaction.CommitAsync();
        return results;
    }

    private sealed record Pending(PreparedAppend Prepared, TaskCompletionSource<AppendResult> Done);
}
