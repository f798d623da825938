using System.Collections.Concurrent;
using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Cylinders;
using Assistant.Records.Log;

namespace Assistant.Records.Storage.Sqlite;

/// <summary>
/// The questions of every turn on connections that are kept open with their statements prepared: to open one, and to have the question
/// worked out anew, costs ten times the answer.
/// </summary>
internal sealed class KeptLookups(IRecordsDatabase database, string connectionString) : ITurnLookups
{
    private readonly ConcurrentStack<LookupLine> idle = new();

    public Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation) =>
        AskAsync(line => line.CurrentVisit(channel, conversation), cancellation);

    public Task<bool> HasFirmsAsync(CancellationToken cancellation) => AskAsync(line => line.HasFirms(), cancellation);

    public Task<IReadOnlyList<OpenVisit>> OpenVisitsAsync(string channel, int most, CancellationToken cancellation) =>
        AskAsync(line => line.OpenVisits(channel, most), cancellation);

    public Task<IReadOnlyList<AssetName>> AssetsAsync(CancellationToken cancellation) => AskAsync(line => line.Assets(), cancellation);

    public Task<IReadOnlyList<CylinderRow>> CylinderRowsAsync(DateTimeOffset? since, DateTimeOffset? until, CancellationToken cancellation) =>
        AskAsync(line => line.CylinderRows(since, until), cancellation);

    public void Dispose()
    {
        while (idle.TryPop(out var line))
        {
            line.Dispose();
        }
    }

    // As many lines as ask at the same moment, which are as many as there are threads. One that failed is not kept.
    private Task<TResult> AskAsync<TResult>(Func<LookupLine, TResult> ask, CancellationToken cancellation)
    {
        if (cancellation.IsCancellationRequested)
        {
            return Task.FromCanceled<TResult>(cancellation);
        }

        LookupLine? line = null;
        try
        {
            line = idle.TryPop(out var kept) ? kept : new(connectionString);
            var answer = ask(line);
            idle.Push(line);
            return Task.FromResult(answer);
        }
        catch (Exception failure)
        {
            line?.Dispose();
            return Task.FromException<TResult>(database.Explain(failure) ?? failure);
        }
    }
}
