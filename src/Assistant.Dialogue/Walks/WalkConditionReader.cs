using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Files;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads the conditions of a walk's file; several keys of one condition hold together.</summary>
internal sealed class WalkConditionReader(DialogYaml yaml)
{
    public WalkCondition? Read(string stop, YamlNode node)
    {
        if (node is not YamlMappingNode map || map.Children.Count == 0)
        {
            yaml.Report(DefectKind.BrokenYaml, node, stop, "a condition is a map, such as { coil_ice: blocked }");
            return null;
        }

        var parts = ImmutableArray.CreateBuilder<WalkCondition>();
        foreach (var (key, value) in map)
        {
            var name = ((YamlScalarNode)key).Value ?? "";
            WalkCondition? part = name switch
            {
                "by" => null,
                "ever" => value is YamlMappingNode { Children.Count: 1 } inner
                    ? Word(stop, inner.First().Key, inner, (fact, words) => new WasWord(fact, words))
                    : Broken(stop, value, "ever takes one fact with its words"),
                "disagree" => Pair(stop, map, name) is var (first, second) && Limit(stop, map) is var (by, limit) ? new Disagree(first, second, by, limit) : null,
                "above" => Pair(stop, map, name) is var (first, second) && Fact(map, stop, yaml.Text(map, stop, "by") ?? "") is { } by ? new Above(first, second, by) : null,
                "at" => Enum.TryParse<Place>(((value as YamlScalarNode)?.Value ?? ""), ignoreCase: true, out var place)
                    ? new WasAt(place)
                    : Report(DefectKind.UnknownPlace, stop, value, $"no place {value}"),
                "skipped" => new WasSkipped(yaml.Text(map, stop, name) ?? ""),
                "known" => Fact(value, stop, yaml.Text(map, stop, name) ?? "") is { } known ? new IsKnown(known) : null,
                "read" => Fact(value, stop, yaml.Text(map, stop, name) ?? "") is { } read ? new WasRead(read, stop) : null,
                "found" => yaml.Text(map, stop, name) == "leak" ? new WasLeakFound(stop) : Broken(stop, value, "found: leak is all that can be found"),
                "finished" => new WasFinished(yaml.Text(map, stop, name) ?? ""),
                "chosen" => Named(stop, value, name) is var (choice, options) ? new WasChosen(choice, options) : null,
                "judged" => value is YamlMappingNode
                    ? Named(stop, value, name) is var (other, outcomes) ? new WasJudged(other, outcomes) : null
                    : new WasJudged(stop, [.. yaml.Texts(map, stop, name).Select(w => w.Value ?? "")]),
                _ => Word(stop, key, map, (fact, words) => new IsWord(fact, words)),
            };
            if (part is not null)
            {
                parts.Add(part);
            }
        }

        return parts.Count switch { 0 => null, 1 => parts[0], _ => new All(parts.ToImmutable()) };
    }

    public Fact? Fact(YamlNode at, string stop, string name)
    {
        var fact = FactCatalogue.Find(name);
        if (fact is null)
        {
            yaml.Report(DefectKind.UnknownFact, at, stop, $"no fact {name}");
        }

        return fact;
    }

    /// <summary><c>take: { box_temperature: box_temperature_check }</c></summary>
    public CopiedFact? Copy(string stop, YamlNode node)
    {
        if (node is not YamlMappingNode { Children.Count: 1 } map)
        {
            Broken(stop, node, "take is written { fact: fact it is taken from }");
            return null;
        }

        var (key, value) = map.First();
        return Fact(key, stop, ((YamlScalarNode)key).Value ?? "") is { } to && Fact(value, stop, (value as YamlScalarNode)?.Value ?? "") is { } from
            ? new(to, from)
            : null;
    }

    // { name: word } or { name: [words] }
    private (string Name, ImmutableArray<string> Words)? Named(string stop, YamlNode value, string key)
    {
        if (value is YamlMappingNode { Children.Count: 1 } map)
        {
            var name = ((YamlScalarNode)map.First().Key).Value ?? "";
            return (name, [.. yaml.Texts(map, stop, name).Select(w => w.Value ?? "")]);
        }

        Broken(stop, value, $"{key} takes one name with its words");
        return null;
    }

    private WalkCondition? Word(string stop, YamlNode key, YamlMappingNode map, Func<Fact, ImmutableArray<string>, WalkCondition> make)
    {
        var name = ((YamlScalarNode)key).Value ?? "";
        if (Fact(key, stop, name) is not { } fact)
        {
            return null;
        }

        var words = yaml.Texts(map, stop, name);
        foreach (var word in words.Where(w => !fact.Choices.Contains(w.Value ?? "")))
        {
            yaml.Report(DefectKind.UnknownChoice, word, stop, $"{name} is {string.Join(", ", fact.Choices)}, not {word.Value}");
        }

        return make(fact, [.. words.Select(w => w.Value ?? "")]);
    }

    private (Fact First, Fact Second)? Pair(string stop, YamlMappingNode map, string field)
    {
        var names = yaml.Texts(map, stop, field);
        if (names.Length != 2)
        {
            Broken(stop, map, $"{field} takes two facts");
            return null;
        }

        return Fact(names[0], stop, names[0].Value ?? "") is { } first && Fact(names[1], stop, names[1].Value ?? "") is { } second ? (first, second) : null;
    }

    private (TemperatureDifference By, string Text)? Limit(string stop, YamlMappingNode map)
    {
        var text = yaml.Text(map, stop, "by") ?? "";
        var cut = text.IndexOf(' ', StringComparison.Ordinal);
        if (cut > 0
            && double.TryParse(text[..cut], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            && UnitOfMeasure.Find(text[(cut + 1)..], Dimension.TemperatureDifference) is { } unit)
        {
            return (new(unit.ToCanonical(value)), text);
        }

        Report(DefectKind.BadValue, stop, map, $"by is a difference with its unit, such as 2 degF, not \"{text}\"");
        return null;
    }

    private WalkCondition? Broken(string stop, YamlNode at, string message) => Report(DefectKind.BrokenYaml, stop, at, message);

    private WalkCondition? Report(DefectKind kind, string stop, YamlNode at, string message)
    {
        yaml.Report(kind, at, stop, message);
        return null;
    }
}
