using Assistant.Dialogue.Visits;
using Assistant.Records.Log;
using Microsoft.Extensions.Caching.Memory;

namespace Assistant.Records.Conversations;

/// <summary>
/// The states of the visits in use, folded once and kept in memory up to a bound; what is not kept is folded again from the log, and what
/// another program added meanwhile is added here.
/// </summary>
internal sealed class VisitStates(EventLog log, int kept) : IDisposable
{
    private readonly MemoryCache cache = new(new MemoryCacheOptions { SizeLimit = kept });

    /// <param name="version">The state is this old at the most.</param>
    public async Task<VisitState> GetAsync(string visitId, int version, CancellationToken cancellation)
    {
        var state = cache.Get<VisitState>(visitId) ?? VisitState.Empty;
        if (state.Version > 0 && state.Version >= version)
        {
            return state;
        }

        var folded = (await log.ReadAsync(visitId, state.Version, cancellation)).Aggregate(state, (before, happened) => before.Apply(happened));
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
