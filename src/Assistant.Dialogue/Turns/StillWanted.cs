using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;

namespace Assistant.Dialogue.Turns;

/// <summary>What the walk will ask at the same place after the stop it stands at, so that one who has it in view can say it along.</summary>
internal static class StillWanted
{
    /// <summary>
    /// The facts not known yet, along the usual way, by their contract names; it ends where the walk changes its place, waits for a word
    /// or judges. A word that leads on to another place brings what is wanted there.
    /// </summary>
    public static ImmutableArray<string> After(WalkDefinition walk, WalkStop stop, VisitState state)
    {
        if (stop.Kind is not (StopKind.Asks or StopKind.Confirms) || stop.Place is null || stop.Next.IsEmpty || state.Outcome is not null)
        {
            return [];
        }

        var wanted = ImmutableArray.CreateBuilder<string>();
        var next = walk.Stop(stop.Next[^1].Go);
        var place = stop.Kind == StopKind.Asks ? stop.Place : next.Place;

        // The walk has no way back, so this ends.
        while (next.Kind == StopKind.Asks && next.Place == place && next.Place is not null)
        {
            if (next.Asks is { } fact && fact != stop.Asks && !state.Facts.Has(fact))
            {
                wanted.Add(fact.Name);
            }

            next = walk.Stop(next.Next[^1].Go);
        }

        return wanted.ToImmutable();
    }
}
