namespace Assistant.Records.Storage;

/// <summary>Work on a context of its own, with failures in words for people.</summary>
internal static class DatabaseAccess
{
    /// <exception cref="RecordsException">The database failed; the message says how.</exception>
    public static async Task<TResult> UseAsync<TResult>(this IRecordsDatabase database, Func<RecordsContext, Task<TResult>> work)
    {
        await using var context = database.NewContext();
        return await database.ExplainAsync(() => work(context));
    }

    /// <summary>Work that writes, on a context of its own. It must not wait for other work that writes, such as an append to the log.</summary>
    /// <exception cref="RecordsException">The database failed; the message says how.</exception>
    public static Task<TResult> WriteAsync<TResult>(this IRecordsDatabase database, Func<RecordsContext, Task<TResult>> work, CancellationToken cancellation) =>
        database.InTurnAsync(() => database.UseAsync(work), cancellation);

    /// <summary>Work on what is at hand, with failures in words for people.</summary>
    /// <exception cref="RecordsException">The database failed; the message says how.</exception>
    public static async Task<TResult> ExplainAsync<TResult>(this IRecordsDatabase database, Func<Task<TResult>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (failure is not RecordsException && database.Explain(failure) is { } explained)
        {
            throw explained;
        }
    }
}
