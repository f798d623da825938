using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Rules;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads a walk's file strictly: every field is known, every name leads somewhere, every mistake names file, line and key.</summary>
public sealed class WalkLoader
{
    private readonly DialogYaml yaml;
    private readonly WalkFields fields;
    private readonly WalkConditionReader conditions;

    private WalkLoader(DialogFile file, PhraseBook phrases)
    {
        yaml = new(file);
        fields = new(yaml, phrases);
        conditions = new(yaml);
    }

    /// <exception cref="DialogDataException">With every mistake found.</exception>
    public static WalkDefinition Load(DialogFile file, PhraseBook phrases) => new WalkLoader(file, phrases).Load();

    private WalkDefinition Load()
    {
        var root = yaml.Root();
        yaml.AllowOnly(root, "walk", "walk", "title", "begins", "needs", "places", "established", "actions", "outdates", "stops");
        var name = fields.Required(root, "walk", "walk");
        var title = fields.Required(root, "walk", "title");
        ImmutableArray<string> places = [.. yaml.Texts(root, "walk", "places").Select(p => p.Value ?? "")];
        if (places.IsEmpty)
        {
            yaml.Report(DefectKind.MissingField, root, "places", "name the places in the order they are visited");
        }

        var stops = new WalkStopReader(yaml, fields, conditions, places).Stops(root);
        var (actsAt, ownBranch) = Established(root);
        var actions = Actions(root);
        var outdates = Outdates(root, "outdates");
        ImmutableArray<WalkStop> needs = stops.IsEmpty ? [] : [.. Needs(root, stops[0].Name)];
        if (yaml.Defects.IsEmpty)
        {
            WalkGraph.Check(yaml, root, stops, actsAt);
        }

        if (!yaml.Defects.IsEmpty)
        {
            throw new DialogDataException(yaml.Defects);
        }

        return new(name, title, places, [.. needs, .. stops], actsAt, ownBranch, actions)
        {
            Outdates = outdates,
            Links = [.. WalkLinks.Of(yaml.Path, stops), .. actions.Values.Where(a => a.Walk is not null).Select(a => new WalkLink(a.Walk!, false, yaml.Path, (int)DialogYaml.At(root, "actions").Start.Line, "actions"))],
        };
    }

    /// <summary>A stop ahead of the walk for each fact it needs: what is known already is not asked.</summary>
    private IEnumerable<WalkStop> Needs(YamlMappingNode root, string first)
    {
        var needed = yaml.Texts(root, "needs", "needs").Select(n => (At: n, Fact: conditions.Fact(n, "needs", n.Value ?? ""))).Where(n => n.Fact is not null).ToList();
        for (var i = 0; i < needed.Count; i++)
        {
            var (at, fact) = needed[i];
            var next = i + 1 < needed.Count ? "needs-" + needed[i + 1].Fact : first;
            var line = (int)at.Start.Line;
            yield return new(
                "needs-" + fact, StopKind.Asks, null, fact, fields.Phrase(at, "needs", "ask." + fact), "why.needs", [], [], null, false, null,
                [new(null, next, null, null, false, line)], line);
        }
    }

    private (string? ActsAt, FrozenSet<FaultCode> OwnBranch) Established(YamlMappingNode root)
    {
        switch (DialogYaml.Field(root, "established"))
        {
            case null:
                return (null, FrozenSet<FaultCode>.Empty);
            case YamlMappingNode map:
                yaml.AllowOnly(map, "established", "go", "except");
                return (fields.Required(map, "established", "go"), yaml.Texts(map, "established", "except").Select(n => Fault(n, "established")).ToFrozenSet());
            case var other:
                yaml.Report(DefectKind.BrokenYaml, other, "established", "say where an established fault leads: { go: ..., except: [...] }");
                return (null, FrozenSet<FaultCode>.Empty);
        }
    }

    private FrozenDictionary<FaultCode, FaultAction> Actions(YamlMappingNode root)
    {
        var actions = new Dictionary<FaultCode, FaultAction>();
        foreach (var (key, node) in (DialogYaml.Field(root, "actions") as YamlMappingNode)?.Children ?? new YamlMappingNode().Children)
        {
            var name = ((YamlScalarNode)key).Value ?? "";
            if (node is not YamlMappingNode map)
            {
                yaml.Report(DefectKind.BrokenYaml, node, name, "an action is { cautions: [...], outdates: [...], remind: 20 min, follow-up-days: 7 }");
                continue;
            }

            yaml.AllowOnly(map, name, "cautions", "outdates", "remind", "follow-up-days", "walk");
            fields.Phrase(map, name, "act." + name);
            var outdates = Outdates(map, name);
            var days = yaml.Text(map, name, "follow-up-days") ?? "7";
            if (!int.TryParse(days, NumberStyles.None, CultureInfo.InvariantCulture, out var followUp))
            {
                yaml.Report(DefectKind.BadValue, DialogYaml.At(map, "follow-up-days"), name, $"follow-up-days is a whole number of days, not \"{days}\"");
            }

            actions[Fault((YamlScalarNode)key, "actions")] = new(
                fields.Cautions(map, name, "cautions"), outdates, fields.Minutes(map, name), followUp, yaml.Text(map, name, "walk"));
        }

        return actions.ToFrozenDictionary();
    }

    private ImmutableArray<string> Outdates(YamlMappingNode map, string key)
    {
        var outdates = yaml.Texts(map, key, "outdates");
        foreach (var fact in outdates)
        {
            conditions.Fact(fact, key, fact.Value ?? "");
        }

        return [.. outdates.Select(f => f.Value!)];
    }

    private FaultCode Fault(YamlScalarNode node, string key)
    {
        if (Codes.FindFault(node.Value ?? "") is { } code)
        {
            return code;
        }

        yaml.Report(DefectKind.BadValue, node, key, $"no fault {node.Value}");
        return FaultCode.NotEnoughEvidence;
    }
}
