using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Files;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Voice.Grammars;

/// <summary>What is listened for, as dialogs/voice/listening.yaml holds it: which phrases, and each unit's numbers. Immutable.</summary>
public sealed class ListeningPlan
{
    private readonly DialogYaml yaml;
    private readonly Dictionary<string, Dictionary<string, NumberSpan>> kinds;
    private readonly Dictionary<string, Dictionary<string, NumberSpan>> facts;

    private ListeningPlan(DialogFile file)
    {
        yaml = new DialogYaml(file);
        var root = yaml.Root();
        yaml.AllowOnly(root, "file", "most-words", "commands", "confirmed", "controls", "confirm", "digits", "steps", "by-number", "of-two", "leak", "wake", "numbers", "facts");
        MostWords = int.TryParse(yaml.Text(root, "most-words", "most-words"), CultureInfo.InvariantCulture, out var most) ? most : 3;
        Commands = Phrases(root, "commands");
        Confirmed = [.. yaml.Texts(root, "confirmed", "confirmed").Select(n => n.Value ?? "")];
        Controls = Phrases(root, "controls");
        Confirm = Phrases(root, "confirm");
        Digits = Phrases(root, "digits");
        Steps = Phrases(root, "steps");
        ByNumber = (DialogYaml.Field(root, "by-number") as YamlScalarNode)?.Value ?? "number";
        OfTwo = Phrases(root, "of-two");
        Leak = [.. yaml.Texts(root, "leak", "leak").Select(n => n.Value ?? "")];
        Wake = [.. yaml.Texts(root, "wake", "wake").Select(n => n.Value ?? "")];
        kinds = Spans(root, "numbers", name => Enum.TryParse<FactKind>(Joined(name), ignoreCase: true, out _));
        facts = Spans(root, "facts", name => FactCatalogue.Find(name) is not null);
        foreach (var name in Confirmed.Where(n => !Commands.ContainsKey(n)))
        {
            yaml.Report(DefectKind.BadValue, root, $"confirmed.{name}", "only a command can be confirmed");
        }

        Require(root, "confirm", Confirm, "accept", "reject");
        Require(root, "digits", Digits, "go", "clear");
        Require(root, "controls", Controls, "stop", "slower", "faster", "louder");
    }

    /// <summary>The longest answer to a choice, in words.</summary>
    public int MostWords { get; }

    /// <summary>The phrases of each of the walk's commands.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Commands { get; }

    /// <summary>The commands that act only after a yes.</summary>
    public ImmutableArray<string> Confirmed { get; }

    /// <summary>stop, slower, faster, louder: for the voice alone.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Controls { get; }

    /// <summary>accept and reject.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Confirm { get; }

    /// <summary>go and clear, for entry digit by digit.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Digits { get; }

    /// <summary>The words that answer a step of the walk that asks for no fact: ok, done, later.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> Steps { get; }

    /// <summary>The word before a choice's number: "number one".</summary>
    public string ByNumber { get; }

    /// <summary>first and second: which of two people's readings.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<string>> OfTwo { get; }

    /// <summary>The words before the place of a leak.</summary>
    public ImmutableArray<string> Leak { get; }

    public ImmutableArray<string> Wake { get; }

    /// <exception cref="DialogDataException">With every mistake found, each with file, line and key.</exception>
    public static ListeningPlan Load(DialogFile file)
    {
        var plan = new ListeningPlan(file);
        return plan.yaml.Defects.IsEmpty ? plan : throw new DialogDataException(plan.yaml.Defects);
    }

    /// <summary>The numbers a fact may be answered with in a unit, or null where it is not listened for in it.</summary>
    public NumberSpan? SpanOf(Fact fact, UnitOfMeasure unit)
    {
        if (facts.TryGetValue(fact.Name, out var own))
        {
            return own.GetValueOrDefault(unit.Symbol) ?? (own.Count > 0 && HasDimension(own, unit) ? KindSpan(unit) : null);
        }

        return KindSpan(unit);
    }

    /// <summary>The numbers of a unit whatever was asked.</summary>
    public NumberSpan? KindSpan(UnitOfMeasure unit) => kinds.GetValueOrDefault(unit.Dimension.ToString())?.GetValueOrDefault(unit.Symbol);

    // A fact that names some units keeps its kind's numbers in the others.
    private static bool HasDimension(Dictionary<string, NumberSpan> own, UnitOfMeasure unit) =>
        own.Keys.Any(symbol => UnitOfMeasure.Find(symbol, unit.Dimension) is not null);

    private static string Joined(string name) => name.Replace(" ", "", StringComparison.Ordinal);

    private ImmutableSortedDictionary<string, ImmutableArray<string>> Phrases(YamlMappingNode root, string field) =>
        DialogYaml.Field(root, field) is YamlMappingNode map
            ? map.Children.Keys.OfType<YamlScalarNode>().Select(k => k.Value ?? "").ToImmutableSortedDictionary(
                name => name, name => yaml.Texts(map, name, name).Select(n => n.Value ?? "").ToImmutableArray(), StringComparer.Ordinal)
            : ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty;

    private void Require(YamlMappingNode root, string field, ImmutableSortedDictionary<string, ImmutableArray<string>> phrases, params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (!phrases.TryGetValue(name, out var said) || said.IsEmpty)
            {
                yaml.Report(DefectKind.MissingField, root, $"{field}.{name}", "there must be at least one phrase for it");
            }
        }
    }

    private Dictionary<string, Dictionary<string, NumberSpan>> Spans(YamlMappingNode root, string field, Func<string, bool> known)
    {
        var spans = new Dictionary<string, Dictionary<string, NumberSpan>>(StringComparer.OrdinalIgnoreCase);
        foreach (var (key, entry) in DialogYaml.Field(root, field) as YamlMappingNode ?? [])
        {
            var name = ((YamlScalarNode)key).Value ?? "";
            if (!known(name) || entry is not YamlMappingNode units)
            {
                yaml.Report(DefectKind.UnknownFact, key, name, $"no fact or kind of fact '{name}' with units under it");
                continue;
            }

            spans[field == "numbers" ? Joined(name) : name] = units.Children.Where(u => u.Value is YamlMappingNode)
                .ToDictionary(u => ((YamlScalarNode)u.Key).Value ?? "", u => Span((YamlMappingNode)u.Value, name), StringComparer.Ordinal);
        }

        return spans;
    }

    private NumberSpan Span(YamlMappingNode map, string key)
    {
        yaml.AllowOnly(map, key, "from", "to", "places");
        int Whole(string field)
        {
            if (int.TryParse(yaml.Text(map, key, field), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value))
            {
                return value;
            }

            yaml.Report(DefectKind.BadValue, map, key, $"{field} takes a whole number");
            return 0;
        }

        var span = new NumberSpan(Whole("from"), Whole("to"), Whole("places"));
        if (span.To <= span.From || span.Places is < 0 or > 3)
        {
            yaml.Report(DefectKind.BadValue, map, key, "to must be above from, and places from 0 to 3");
        }

        return span;
    }
}
