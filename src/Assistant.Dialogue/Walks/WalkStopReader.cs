using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads the stops of a walk's file.</summary>
internal sealed class WalkStopReader(DialogYaml yaml, WalkFields fields, WalkConditionReader conditions, ImmutableArray<string> places)
{
    private readonly StopKindReader kinds = new(yaml, fields);

    public ImmutableArray<WalkStop> Stops(YamlMappingNode root)
    {
        if (DialogYaml.Field(root, "stops") is not YamlSequenceNode { Children.Count: > 0 } list)
        {
            yaml.Report(DefectKind.MissingField, root, "stops", "a walk has a list of stops");
            return [];
        }

        var stops = ImmutableArray.CreateBuilder<WalkStop>();
        foreach (var node in list)
        {
            if (node is not YamlMappingNode map)
            {
                yaml.Report(DefectKind.BrokenYaml, node, "stops", "a stop is a map that begins with its name, \"- stop: ...\"");
                continue;
            }

            var stop = Stop(map);
            if (stops.Any(s => s.Name == stop.Name) || places.Contains(stop.Name))
            {
                yaml.Report(DefectKind.DuplicateId, map, stop.Name, "a stop or place of this name is there already");
            }

            stops.Add(stop);
        }

        return stops.ToImmutable();
    }

    private WalkStop Stop(YamlMappingNode map)
    {
        var name = fields.Required(map, "stop", "stop");
        yaml.AllowOnly(
            map, name, "stop", "place", "asks", "repeats", "confirms", "proves", "acts", "chooses", "options", "judges", "again", "since", "ends", "walk", "closes",
            "says", "why", "cautions", "hazards", "until", "required", "remind", "next");
        var kind = kinds.Kind(map, name);
        var asks = yaml.Text(map, name, "asks") is { } fact ? conditions.Fact(DialogYaml.At(map, "asks"), name, fact) : null;
        var says = kind == StopKind.Confirms ? yaml.Text(map, name, "confirms")! : yaml.Text(map, name, "says") ?? (asks is null ? "" : "ask." + asks);
        var place = yaml.Text(map, name, "place");
        if (place is not null && !places.Contains(place))
        {
            yaml.Report(DefectKind.UnknownPlace, DialogYaml.At(map, "place"), name, $"no place {place}; the walk's places: {string.Join(", ", places)}");
        }

        if (kind == StopKind.Chooses && says.Length == 0)
        {
            says = fields.Required(map, name, "says");
        }

        return new(
            name,
            kind,
            place,
            asks,
            fields.Phrase(DialogYaml.At(map, kind == StopKind.Confirms ? "confirms" : asks is null ? "says" : "asks"), name, says),
            kind == StopKind.Ends || (kind == StopKind.Judges && asks is null) ? "" : fields.Phrase(DialogYaml.At(map, "why"), name, fields.Required(map, name, "why")),
            fields.Cautions(map, name, "cautions"),
            fields.Cautions(map, name, "hazards"),
            DialogYaml.Field(map, "until") is { } until ? conditions.Read(name, until) : null,
            fields.Yes(map, name, "required"),
            fields.Minutes(map, name),
            Next(map, name, kind),
            (int)map.Start.Line)
        {
            Repeats = kind == StopKind.Judges || fields.Yes(map, name, "repeats"),
            Choice = kind == StopKind.Chooses ? kinds.Choice(map, name) : null,
            Judgement = kind == StopKind.Judges ? kinds.Judgement(map, name) : null,
            Offers = kind == StopKind.Ends ? yaml.Text(map, name, "walk") : null,
            Closes = kind == StopKind.Ends && fields.Yes(map, name, "closes"),
        };
    }

    private ImmutableArray<WalkBranch> Next(YamlMappingNode map, string name, StopKind kind)
    {
        if (kind == StopKind.Ends)
        {
            return [];
        }

        if (DialogYaml.Field(map, "next") is not YamlSequenceNode { Children.Count: > 0 } list)
        {
            yaml.Report(DefectKind.MissingField, map, name, "next is a list of ways, \"- go: ...\"");
            return [];
        }

        var branches = ImmutableArray.CreateBuilder<WalkBranch>();
        foreach (var node in list.OfType<YamlMappingNode>())
        {
            yaml.AllowOnly(node, name, "when", "go", "back", "says", "take");
            var back = yaml.Text(node, name, "back");
            branches.Add(new(
                DialogYaml.Field(node, "when") is { } when ? conditions.Read(name, when) : null,
                back ?? fields.Required(node, name, "go"),
                yaml.Text(node, name, "says") is { } says ? fields.Phrase(DialogYaml.At(node, "says"), name, says) : null,
                DialogYaml.Field(node, "take") is { } take ? conditions.Copy(name, take) : null,
                back is not null,
                (int)node.Start.Line));
        }

        // A judgement's ways may name every outcome instead: the check of the graph sees to that.
        if (branches.Count > 0 && branches[^1].When is not null && kind != StopKind.Judges)
        {
            yaml.Report(DefectKind.MissingBranch, list, name, "the last way has a condition: say where to go otherwise");
        }

        return branches.ToImmutable();
    }
}
