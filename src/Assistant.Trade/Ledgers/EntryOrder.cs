using System.Collections.Immutable;

namespace Assistant.Trade.Ledgers;

/// <summary>
/// The order in which one cylinder's entries happened. Time decides; among entries of the same time the weights do: each
/// begins where the last one ended, where they can be so arranged at all. The order of arrival never matters.
/// </summary>
internal static class EntryOrder
{
    public static ImmutableArray<CylinderEntry> Of(IEnumerable<CylinderEntry> entries)
    {
        var moments = entries.GroupBy(e => e.At.UtcTicks).OrderBy(g => g.Key).Select(Canonical).ToList();
        var ordered = ImmutableArray.CreateBuilder<CylinderEntry>();
        var last = OpeningOfACircle(moments);
        foreach (var open in moments)
        {
            while (open.Count > 0)
            {
                ordered.AddRange(Chain(open, last is { } at && open.Exists(e => e.GrossBefore == at) ? at : Start(open)));
                last = ordered[^1].GrossAfter;
            }
        }

        return ordered.ToImmutable();
    }

    private static List<CylinderEntry> Canonical(IEnumerable<CylinderEntry> moment) => moment
        .OrderByDescending(e => e.GrossBefore)
        .ThenByDescending(e => e.GrossAfter)
        .ThenBy(e => e.Id, StringComparer.Ordinal)
        .ToList();

    // A first moment that ends where it began can begin at any of its weights: what follows tells which.
    private static Grams? OpeningOfACircle(List<List<CylinderEntry>> moments)
    {
        HashSet<Grams>? candidates = null;
        foreach (var moment in moments)
        {
            var isCircle = moment.TrueForAll(e => Surplus(moment, e.GrossBefore) == 0);
            IEnumerable<Grams> starts = isCircle ? moment.Select(e => e.GrossBefore) : [Start(moment)];
            var narrowed = candidates is null ? starts.ToHashSet() : candidates.Intersect(starts).ToHashSet();
            if (narrowed.Count == 0)
            {
                break;
            }

            candidates = narrowed;
            if (!isCircle)
            {
                break;
            }
        }

        return candidates?.Max();
    }

    // The weight that more entries leave than reach; among equals the heaviest.
    private static Grams Start(List<CylinderEntry> open) =>
        open.OrderByDescending(e => Surplus(open, e.GrossBefore)).First().GrossBefore;

    private static int Surplus(List<CylinderEntry> open, Grams weight) =>
        open.Count(e => e.GrossBefore == weight) - open.Count(e => e.GrossAfter == weight);

    // An Euler trail (Hierholzer 1873): walk until stuck, then splice in the closed walks left over on the way.
    private static List<CylinderEntry> Chain(List<CylinderEntry> open, Grams start)
    {
        var chain = Walk(open, start);
        for (var i = 0; i < chain.Count; i++)
        {
            var from = chain[i].GrossBefore;
            var rest = new List<CylinderEntry>(open);
            var detour = Walk(rest, from);
            if (detour.Count > 0 && detour[^1].GrossAfter == from)
            {
                chain.InsertRange(i, detour);
                open.Clear();
                open.AddRange(rest);
            }
        }

        return chain;
    }

    private static List<CylinderEntry> Walk(List<CylinderEntry> open, Grams start)
    {
        var walk = new List<CylinderEntry>();
        var at = start;
        for (var i = open.FindIndex(e => e.GrossBefore == at); i >= 0; i = open.FindIndex(e => e.GrossBefore == at))
        {
            walk.Add(open[i]);
            at = open[i].GrossAfter;
            open.RemoveAt(i);
        }

        return walk;
    }
}
