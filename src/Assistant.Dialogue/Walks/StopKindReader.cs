using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Judgements;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Understanding.Lexicons;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads what a stop wants: its kind, and the options or the judgement that go with it.</summary>
internal sealed class StopKindReader(DialogYaml yaml, WalkFields fields)
{
    public StopKind Kind(YamlMappingNode map, string name)
    {
        var kinds = Enum.GetValues<StopKind>().Where(k => DialogYaml.Field(map, FieldOf(k)) is not null).ToList();
        if (kinds.Count == 2 && kinds.Contains(StopKind.Judges))
        {
            // A judgement may ask for the reading it judges.
            kinds.Remove(StopKind.Asks);
        }

        if (kinds.Count == 1)
        {
            return kinds[0];
        }

        yaml.Report(DefectKind.MissingField, map, name, "a stop either asks, confirms, chooses, judges, proves, acts or ends");
        return StopKind.Ends;
    }

    /// <summary><c>chooses: NAME</c> with <c>options: [yes, no]</c> or <c>options: { flare: [flare, (flare|the) nut] }</c>.</summary>
    public StopChoice Choice(YamlMappingNode map, string stop)
    {
        var options = ImmutableArray.CreateBuilder<StopOption>();
        switch (DialogYaml.Field(map, "options"))
        {
            case YamlMappingNode named:
                foreach (var (key, _) in named)
                {
                    var name = ((YamlScalarNode)key).Value ?? "";
                    options.Add(Option(name, yaml.Texts(named, stop, name)));
                }

                break;
            default:
                options.AddRange(yaml.Texts(map, stop, "options").Select(n => Option(n.Value ?? "", [])));
                break;
        }

        if (options.Count < 2)
        {
            yaml.Report(DefectKind.MissingField, map, stop, "name at least two options");
        }

        foreach (var option in options)
        {
            fields.Phrase(DialogYaml.At(map, "options"), stop, "word." + option.Name);
        }

        foreach (var (one, word) in options.SelectMany(o => o.Words.Select(w => (o, w))))
        {
            if (options.Any(o => o != one && o.Words.Contains(word)))
            {
                yaml.Report(DefectKind.DuplicateId, DialogYaml.At(map, "options"), stop, $"\"{word}\" names two options");
            }
        }

        return new(fields.Required(map, stop, "chooses"), options.ToImmutable());
    }

    public StopJudgement? Judgement(YamlMappingNode map, string stop)
    {
        var name = fields.Required(map, stop, "judges");
        if (JudgementTable.Find(name) is not { } judgement)
        {
            yaml.Report(DefectKind.UnknownJudgement, DialogYaml.At(map, "judges"), stop, $"no judgement {name}; known: {string.Join(", ", JudgementTable.All.Select(j => j.Name))}");
            return null;
        }

        var again = yaml.Texts(map, stop, "again");
        foreach (var outcome in again.Where(n => !judgement.Outcomes.Contains(n.Value ?? "")))
        {
            yaml.Report(DefectKind.UnknownOutcome, outcome, stop, $"{name} comes out as {string.Join(", ", judgement.Outcomes)}, not {outcome.Value}");
        }

        foreach (var outcome in judgement.Outcomes)
        {
            fields.Phrase(DialogYaml.At(map, "judges"), stop, judgement.Phrase(outcome));
        }

        return new(judgement, [.. again.Select(n => n.Value ?? "")], yaml.Text(map, stop, "since"));
    }

    private StopOption Option(string name, ImmutableArray<YamlScalarNode> patterns)
    {
        // What stands on its button names it too.
        var words = new HashSet<string>(fields.WordsOf(name).Prepend(name).Select(ShortWords.Plain), StringComparer.Ordinal);
        foreach (var pattern in patterns)
        {
            try
            {
                words.UnionWith(PhrasePattern.Expand(pattern.Value ?? "").Select(ShortWords.Plain));
            }
            catch (FormatException wrong)
            {
                yaml.Report(DefectKind.BadValue, pattern, name, wrong.Message);
            }
        }

        return new(name, [.. words]);
    }

    private static string FieldOf(StopKind kind) => kind.ToString().ToLowerInvariant();
}
