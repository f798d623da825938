namespace Assistant.Records.Storage;

/// <summary>Work on a context of its own, with failures in words for people.</summary>
internal static class DatabaseAccess
{
    /// <exception cref="RecordsException">The database failed; the message says how.</exception>
    public static async Task<TResult> UseAsync<TResult>(this IRecordsDatabase database, Func<RecordsContext, Task<TResult>> work)
    {
        try
        {
            await using var context = database.NewContext();
            return await work(context);
        }
        catch (Exception failure) when (failure is not RecordsException && database.Explain(failure) is { } explained)
        {
            throw explained;
        }
    }
}
