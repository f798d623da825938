using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Walks;

/// <summary>A walk as its file defines it, checked as a graph.</summary>
/// <param name="Places">In the order they are visited.</param>
/// <param name="ActsAt">The stop an established fault leads to at once.</param>
/// <param name="OwnBranch">The faults that have a branch of their own in the walk and do not lead there.</param>
/// <param name="Actions">What each fault needs to be put right.</param>
public sealed record WalkDefinition(
    string Name,
    string Title,
    ImmutableArray<string> Places,
    ImmutableArray<WalkStop> Stops,
    string ActsAt,
    FrozenSet<FaultCode> OwnBranch,
    FrozenDictionary<FaultCode, FaultAction> Actions)
{
    private readonly FrozenDictionary<string, WalkStop> byName = Stops.ToFrozenDictionary(s => s.Name, StringComparer.Ordinal);

    public WalkStop First => Stops[0];

    /// <exception cref="KeyNotFoundException">The walk has no such stop.</exception>
    public WalkStop Stop(string name) => byName[name];

    /// <summary>The stop of that name, or null.</summary>
    public WalkStop? Find(string name) => byName.GetValueOrDefault(name);

    public FaultAction Action(FaultCode fault) => Actions.GetValueOrDefault(fault, NoAction);

    private static readonly FaultAction NoAction = new([], [], null, 7);
}
