using System.Collections.Immutable;
using Assistant.Dialogue.Files;

namespace Assistant.Dialogue.Walks;

/// <summary>Checks that a walk names options and outcomes that are there, and handles every outcome of its judgements.</summary>
internal static class WalkOutcomes
{
    public static void Check(DialogYaml yaml, ImmutableArray<WalkStop> stops)
    {
        foreach (var stop in stops)
        {
            foreach (var (condition, line) in Conditions(stop))
            {
                Check(yaml, stops, stop, condition, line);
            }

            if (stop.Judgement is { } judged)
            {
                Handled(yaml, stop, judged);
            }
        }
    }

    /// <summary>The single conditions of a stop, each with its line.</summary>
    public static IEnumerable<(WalkCondition Condition, int Line)> Conditions(WalkStop stop) =>
        Parts(stop.Until, stop.Line).Concat(stop.Next.SelectMany(b => Parts(b.When, b.Line)));

    private static IEnumerable<(WalkCondition, int)> Parts(WalkCondition? condition, int line) => condition switch
    {
        null => [],
        All all => all.Parts.Select(p => (p, line)),
        _ => [(condition, line)],
    };

    private static void Check(DialogYaml yaml, ImmutableArray<WalkStop> stops, WalkStop stop, WalkCondition condition, int line)
    {
        switch (condition)
        {
            case WasJudged judged when stops.FirstOrDefault(s => s.Name == judged.Stop)?.Judgement is not { } known:
                yaml.Report(DefectKind.UnknownLink, line, stop.Name, $"{judged.Stop} is no stop that judges");
                break;
            case WasJudged judged:
                var judgement = stops.First(s => s.Name == judged.Stop).Judgement!.Judgement;
                foreach (var outcome in judged.Outcomes.Where(o => !judgement.Outcomes.Contains(o)))
                {
                    yaml.Report(DefectKind.UnknownOutcome, line, stop.Name, $"{judgement.Name} comes out as {string.Join(", ", judgement.Outcomes)}, not {outcome}");
                }

                break;
            case WasChosen chosen when stops.FirstOrDefault(s => s.Choice?.Name == chosen.Name)?.Choice is { } choice:
                foreach (var option in chosen.Options.Where(o => choice.Options.All(c => c.Name != o)))
                {
                    yaml.Report(DefectKind.UnknownChoice, line, stop.Name, $"{choice.Name} is {string.Join(", ", choice.Options.Select(o => o.Name))}, not {option}");
                }

                break;
        }
    }

    private static void Handled(DialogYaml yaml, WalkStop stop, StopJudgement judged)
    {
        var named = stop.Next.Select(b => b.When).OfType<WasJudged>().Where(w => w.Stop == stop.Name).SelectMany(w => w.Outcomes).Concat(judged.Again).ToHashSet(StringComparer.Ordinal);
        var hasOtherwise = stop.Next.Any(b => b.When is null);
        foreach (var outcome in judged.Judgement.Outcomes.Where(o => !named.Contains(o) && !hasOtherwise))
        {
            yaml.Report(DefectKind.MissingBranch, stop.Line, stop.Name, $"{judged.Judgement.Name} may come out as {outcome}, and no way says where to go then");
        }

        if (!hasOtherwise && !stop.IsRequired && stop.Asks is not null)
        {
            yaml.Report(DefectKind.MissingBranch, stop.Line, stop.Name, "it may be left out: say where to go otherwise, or that it is required");
        }
    }
}
