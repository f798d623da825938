using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Checks the ways between the stops of a walk.</summary>
internal static class WalkGraph
{
    public static void Check(DialogYaml yaml, YamlMappingNode root, ImmutableArray<WalkStop> stops, string? actsAt)
    {
        var byName = stops.ToDictionary(s => s.Name);
        foreach (var (stop, branch) in stops.SelectMany(s => s.Next.Select(b => (s, b))).Where(p => !byName.ContainsKey(p.b.Go)))
        {
            yaml.Report(DefectKind.UnknownLink, branch.Line, stop.Name, $"no stop {branch.Go} to go to");
        }

        foreach (var (stop, branch, skipped) in stops.SelectMany(s => s.Next.Select(b => (s, b, (b.When as WasSkipped)?.Stop))))
        {
            if (skipped is not null && !byName.ContainsKey(skipped))
            {
                yaml.Report(DefectKind.UnknownLink, branch.Line, stop.Name, $"no stop {skipped} that could be left out");
            }
        }

        foreach (var (stop, since) in stops.Select(s => (s, s.Judgement?.Since)).Where(p => p.Item2 is not null && !byName.ContainsKey(p.Item2)))
        {
            yaml.Report(DefectKind.UnknownLink, stop.Line, stop.Name, $"no stop {since} from which readings could count");
        }

        if (actsAt is not null && !byName.ContainsKey(actsAt))
        {
            yaml.Report(DefectKind.UnknownLink, root, "established", $"no stop {actsAt} to go to");
        }

        if (!yaml.Defects.IsEmpty)
        {
            return;
        }

        IEnumerable<WalkStop> On(WalkStop stop) => stop.Next.Where(b => !b.IsBack).Select(b => byName[b.Go]);

        WalkOutcomes.Check(yaml, stops);
        var reached = Reach(actsAt is null ? [stops[0]] : [stops[0], byName[actsAt]], s => s.Next.Select(b => byName[b.Go]));
        foreach (var stop in stops.Where(s => !reached.Contains(s)))
        {
            yaml.Report(DefectKind.UnreachableStop, stop.Line, stop.Name, "no way leads here");
        }

        var before = stops.SelectMany(s => On(s).Select(to => (From: s, To: to))).ToLookup(p => p.To, p => p.From);
        var ending = Reach(stops.Where(s => s.Kind == StopKind.Ends), s => before[s]);
        foreach (var stop in stops.Where(s => !ending.Contains(s)))
        {
            yaml.Report(DefectKind.DeadEnd, stop.Line, stop.Name, "no way leads from here to an end");
        }

        foreach (var stop in stops.Where(s => Reach(On(s), On).Contains(s)))
        {
            yaml.Report(DefectKind.WayBack, stop.Line, stop.Name, "a way from here leads back here: write it \"back:\" where all between is to be passed anew");
        }

        foreach (var (stop, branch) in stops.SelectMany(s => s.Next.Where(b => b.IsBack).Select(b => (s, b))))
        {
            if (branch.Go != stop.Name && !Reach(On(byName[branch.Go]), On).Contains(stop))
            {
                yaml.Report(DefectKind.UnknownLink, branch.Line, stop.Name, $"back leads to a stop ahead of this one, and {branch.Go} is none");
            }
        }
    }

    private static HashSet<WalkStop> Reach(IEnumerable<WalkStop> from, Func<WalkStop, IEnumerable<WalkStop>> on)
    {
        var (seen, open) = (new HashSet<WalkStop>(ReferenceEqualityComparer.Instance), new Stack<WalkStop>(from));
        while (open.TryPop(out var stop))
        {
            if (seen.Add(stop))
            {
                foreach (var next in on(stop))
                {
                    open.Push(next);
                }
            }
        }

        return seen;
    }
}
