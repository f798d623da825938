using System.Collections.Frozen;
using System.Collections.Immutable;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Walks;

/// <summary>A walk as its file defines it, checked as a graph.</summary>
/// <param name="Places">In the order they are visited.</param>
/// <param name="ActsAt">The stop an established fault leads to at once, or null.</param>
/// <param name="OwnBranch">The faults that have a branch of their own in the walk and do not lead there.</param>
/// <param name="Actions">What each fault needs to be put right.</param>
public sealed record WalkDefinition(
    string Name,
    string Title,
    ImmutableArray<string> Places,
    ImmutableArray<WalkStop> Stops,
    string? ActsAt,
    FrozenSet<FaultCode> OwnBranch,
    FrozenDictionary<FaultCode, FaultAction> Actions)
{
    private readonly FrozenDictionary<string, WalkStop> byName = Stops.ToFrozenDictionary(s => s.Name, StringComparer.Ordinal);

    public WalkStop First => Stops[0];

    /// <summary>The facts that what is done on this walk puts out of date: what was read of them before says nothing of the plant from its beginning on.</summary>
    public ImmutableArray<string> Outdates { get; init; } = [];

    /// <summary>The walks this one may lead to, each with the line and stop or fault that names it.</summary>
    internal ImmutableArray<WalkLink> Links { get; init; } = [];

    /// <summary>The stops that are passed anew when a way leads back to <paramref name="stop"/>: it and all that can follow.</summary>
    public ImmutableArray<string> Onward(string stop)
    {
        var (seen, open) = (new HashSet<string>(StringComparer.Ordinal), new Stack<string>([stop]));
        while (open.TryPop(out var next))
        {
            if (seen.Add(next))
            {
                foreach (var branch in Stop(next).Next.Where(b => !b.IsBack))
                {
                    open.Push(branch.Go);
                }
            }
        }

        return [.. Stops.Select(s => s.Name).Where(seen.Contains)];
    }

    /// <exception cref="KeyNotFoundException">The walk has no such stop.</exception>
    public WalkStop Stop(string name) => byName[name];

    /// <summary>The stop of that name, or null.</summary>
    public WalkStop? Find(string name) => byName.GetValueOrDefault(name);

    public FaultAction Action(FaultCode fault) => Actions.GetValueOrDefault(fault, NoAction);

    private static readonly FaultAction NoAction = new([], [], null, 7, null);
}

/// <summary>A name in a walk's file that must be another walk, or a choice of one.</summary>
/// <param name="Key">The stop or fault it stands at.</param>
internal sealed record WalkLink(string Name, bool IsChoice, string File, int Line, string Key);
