using System.Collections.Immutable;

namespace Assistant.Dialogue.Walks;

/// <summary>What a walk's stops name of other walks.</summary>
internal static class WalkLinks
{
    public static IEnumerable<WalkLink> Of(string file, ImmutableArray<WalkStop> stops)
    {
        foreach (var stop in stops)
        {
            if (stop.Offers is { } offered)
            {
                yield return new(offered, false, file, stop.Line, stop.Name);
            }

            foreach (var (condition, line) in WalkOutcomes.Conditions(stop))
            {
                switch (condition)
                {
                    case WasFinished finished:
                        yield return new(finished.Walk, false, file, line, stop.Name);
                        break;
                    case WasChosen chosen when stops.All(s => s.Choice?.Name != chosen.Name):
                        yield return new(chosen.Name, true, file, line, stop.Name);
                        break;
                }
            }
        }
    }
}
