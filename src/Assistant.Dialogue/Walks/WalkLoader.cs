using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using Assistant.Trade.Rules;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads a walk's file strictly: every field is known, every name leads somewhere, every mistake names file, line and key.</summary>
public sealed class WalkLoader
{
    private readonly DialogYaml yaml;
    private readonly PhraseBook phrases;
    private readonly WalkConditionReader conditions;
    private ImmutableArray<string> places = [];

    private WalkLoader(DialogFile file, PhraseBook phrases)
    {
        yaml = new(file);
        this.phrases = phrases;
        conditions = new(yaml);
    }

    /// <exception cref="DialogDataException">With every mistake found.</exception>
    public static WalkDefinition Load(DialogFile file, PhraseBook phrases) => new WalkLoader(file, phrases).Load();

    private WalkDefinition Load()
    {
        var root = yaml.Root();
        yaml.AllowOnly(root, "walk", "walk", "title", "places", "established", "actions", "stops");
        var name = Required(root, "walk", "walk");
        var title = Required(root, "walk", "title");
        places = [.. yaml.Texts(root, "walk", "places").Select(p => p.Value ?? "")];
        if (places.IsEmpty)
        {
            yaml.Report(DefectKind.MissingField, root, "places", "name the places in the order they are visited");
        }

        var stops = Stops(root);
        var (actsAt, ownBranch) = Established(root);
        var actions = Actions(root);
        if (yaml.Defects.IsEmpty)
        {
            WalkGraph.Check(yaml, root, stops, actsAt);
        }

        return yaml.Defects.IsEmpty
            ? new(name, title, places, stops, actsAt, ownBranch, actions)
            : throw new DialogDataException(yaml.Defects);
    }

    private string Required(YamlMappingNode map, string key, string field)
    {
        var text = yaml.Text(map, key, field);
        if (string.IsNullOrWhiteSpace(text))
        {
            yaml.Report(DefectKind.MissingField, map, key, $"the field {field} is missing");
        }

        return text ?? "";
    }

    private ImmutableArray<WalkStop> Stops(YamlMappingNode root)
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
        var name = Required(map, "stop", "stop");
        yaml.AllowOnly(map, name, "stop", "place", "asks", "confirms", "proves", "acts", "ends", "says", "why", "cautions", "hazards", "until", "required", "remind", "next");
        var kind = Kind(map, name);
        var asks = yaml.Text(map, name, "asks") is { } fact ? conditions.Fact(DialogYaml.At(map, "asks"), name, fact) : null;
        var says = kind == StopKind.Confirms ? yaml.Text(map, name, "confirms")! : yaml.Text(map, name, "says") ?? (asks is null ? "" : "ask." + asks);
        var place = yaml.Text(map, name, "place");
        if (place is not null && !places.Contains(place))
        {
            yaml.Report(DefectKind.UnknownPlace, DialogYaml.At(map, "place"), name, $"no place {place}; the walk's places: {string.Join(", ", places)}");
        }

        return new(
            name,
            kind,
            place,
            asks,
            Phrase(DialogYaml.At(map, kind == StopKind.Confirms ? "confirms" : asks is null ? "says" : "asks"), name, says),
            kind == StopKind.Ends ? "" : Phrase(DialogYaml.At(map, "why"), name, Required(map, name, "why")),
            Cautions(map, name, "cautions"),
            Cautions(map, name, "hazards"),
            DialogYaml.Field(map, "until") is { } until ? conditions.Read(name, until) : null,
            yaml.Text(map, name, "required") == "yes",
            Minutes(map, name),
            Next(map, name, kind),
            (int)map.Start.Line);
    }

    private StopKind Kind(YamlMappingNode map, string name)
    {
        var kinds = Enum.GetValues<StopKind>().Where(k => DialogYaml.Field(map, FieldOf(k)) is not null).ToList();
        if (kinds.Count == 1)
        {
            return kinds[0];
        }

        yaml.Report(DefectKind.MissingField, map, name, "a stop either asks, confirms, proves, acts or ends");
        return StopKind.Ends;
    }

    private static string FieldOf(StopKind kind) => kind.ToString().ToLowerInvariant();

    private string Phrase(YamlNode at, string name, string key)
    {
        if (key.Length > 0 && !phrases.Has(key))
        {
            yaml.Report(DefectKind.UnknownPhrase, at, name, $"no phrase {key}");
        }

        return key;
    }

    private ImmutableArray<CautionCode> Cautions(YamlMappingNode map, string name, string field)
    {
        var found = ImmutableArray.CreateBuilder<CautionCode>();
        foreach (var node in yaml.Texts(map, name, field))
        {
            if (Codes.FindCaution(node.Value ?? "") is { } code)
            {
                found.Add(code);
            }
            else
            {
                yaml.Report(DefectKind.UnknownCaution, node, name, $"no caution {node.Value}");
            }
        }

        return found.ToImmutable();
    }

    private TimeSpan? Minutes(YamlMappingNode map, string name)
    {
        var text = yaml.Text(map, name, "remind");
        if (text is null)
        {
            return null;
        }

        if (text.EndsWith(" min", StringComparison.Ordinal) && int.TryParse(text[..^4], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes))
        {
            return TimeSpan.FromMinutes(minutes);
        }

        yaml.Report(DefectKind.BadValue, DialogYaml.At(map, "remind"), name, $"remind is written \"20 min\", not \"{text}\"");
        return null;
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
            yaml.AllowOnly(node, name, "when", "go", "says", "take");
            branches.Add(new(
                DialogYaml.Field(node, "when") is { } when ? conditions.Read(name, when) : null,
                Required(node, name, "go"),
                yaml.Text(node, name, "says") is { } says ? Phrase(DialogYaml.At(node, "says"), name, says) : null,
                DialogYaml.Field(node, "take") is { } take ? conditions.Copy(name, take) : null,
                (int)node.Start.Line));
        }

        if (branches.Count > 0 && branches[^1].When is not null)
        {
            yaml.Report(DefectKind.MissingBranch, list, name, "the last way has a condition: say where to go otherwise");
        }

        return branches.ToImmutable();
    }

    private (string ActsAt, FrozenSet<FaultCode> OwnBranch) Established(YamlMappingNode root)
    {
        if (DialogYaml.Field(root, "established") is not YamlMappingNode map)
        {
            yaml.Report(DefectKind.MissingField, root, "established", "say where an established fault leads: { go: ..., except: [...] }");
            return ("", FrozenSet<FaultCode>.Empty);
        }

        yaml.AllowOnly(map, "established", "go", "except");
        return (Required(map, "established", "go"), yaml.Texts(map, "established", "except").Select(n => Fault(n, "established")).ToFrozenSet());
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

            yaml.AllowOnly(map, name, "cautions", "outdates", "remind", "follow-up-days");
            Phrase(map, name, "act." + name);
            var outdates = yaml.Texts(map, name, "outdates");
            foreach (var fact in outdates)
            {
                conditions.Fact(fact, name, fact.Value ?? "");
            }

            var days = yaml.Text(map, name, "follow-up-days") ?? "7";
            if (!int.TryParse(days, NumberStyles.None, CultureInfo.InvariantCulture, out var followUp))
            {
                yaml.Report(DefectKind.BadValue, DialogYaml.At(map, "follow-up-days"), name, $"follow-up-days is a whole number of days, not \"{days}\"");
            }

            actions[Fault((YamlScalarNode)key, "actions")] = new(Cautions(map, name, "cautions"), [.. outdates.Select(f => f.Value!)], Minutes(map, name), followUp);
        }

        return actions.ToFrozenDictionary();
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
