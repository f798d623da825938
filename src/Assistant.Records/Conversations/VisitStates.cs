using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Microsoft.Extensions.Caching.Memory;

namespace Assistant.Records.Conversations;

/// <summary>The states of the visits in use, folded once and kept in memory up to a bound; what is not kept is folded again from the log.</summary>
internal sealed class VisitStates(EventLog log, int kept) : IDisposable
{
    private readonly MemoryCache cache = new(new MemoryCacheOptions { SizeLimit = kept });

    public async Task<VisitState> GetAsync(string visitId, CancellationToken cancellation)
    {
        if (cache.TryGetValue(visitId, out VisitState? state))
        {
            return state!;
        }

        var folded = VisitState.Fold(await log.ReadAsync(visitId, cancellation));
        Keep(visitId, folded, folded.Version);
        return folded;
    }

    /// <summary>Keeps the state, if it is the one that goes with the stored version.</summary>
    public void Keep(string visitId, VisitState state, int stored)
    {
        if (state.Version == stored)
        {
            cache.Set(visitId, state, new MemoryCacheEntryOptions { Size = 1 });
        }
        else
        {
            Forget(visitId);
        }
    }

    public void Forget(string visitId) => cache.Remove(visitId);

    public void Dispose() => cache.Dispose();
}
