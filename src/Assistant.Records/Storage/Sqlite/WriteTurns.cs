namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// One writer of this program after another, in the order they came. SQLite lets one write at a time and has the others ask again and again:
/// beside a busy log one that asks may come too late each time and be refused.
/// </summary>
internal sealed class WriteTurns
{
    private SemaphoreSlim Turn { get; } = new(1, 1);

    /// <param name="write">Must not wait for another turn.</param>
    public async Task<TResult> RunAsync<TResult>(Func<Task<TResult>> write, CancellationToken cancellation)
    {
        await Turn.WaitAsync(cancellation);
        try
        {
            return await write();
        }
        finally
        {
            Turn.Release();
        }
    }
}
