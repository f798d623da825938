using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Numbers;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>
/// The lexicon the other way round: every way to say a number, a unit or a choice, for whoever must know what may be said before it
/// is said, such as a speech grammar. Read from the same files, so that a word is written once.
/// </summary>
public sealed class LexiconPhrases
{
    private readonly Dictionary<string, YamlMappingNode> files = new(StringComparer.Ordinal);

    private LexiconPhrases()
    {
    }

    /// <summary>The word of each cardinal, such as 17 and "seventeen", 100 and "hundred".</summary>
    public ImmutableSortedDictionary<int, string> Cardinals { get; private init; } = ImmutableSortedDictionary<int, string>.Empty;

    /// <summary>Takes the files of the lexicon as they stand; whether they hold mistakes is said by <see cref="Lexicon.Load"/>.</summary>
    public static LexiconPhrases Read(IEnumerable<DialogFile> lexicon)
    {
        var read = lexicon.ToDictionary(f => System.IO.Path.GetFileName(f.Path), f => new DialogYaml(f).Root(), StringComparer.Ordinal);
        var cardinals = read.TryGetValue("numbers.yaml", out var numbers) ? List(numbers, "cardinals") : [];
        var phrases = new LexiconPhrases
        {
            Cardinals = cardinals.Select(w => (Value: CardinalRecogniser.ValueOf(w) ?? CardinalRecogniser.ValueOf($"one {w}"), Word: w))
                .Where(n => n.Value is not null).ToImmutableSortedDictionary(n => (int)n.Value!.Value, n => n.Word),
        };
        foreach (var (name, root) in read)
        {
            phrases.files[name] = root;
        }

        return phrases;
    }

    /// <summary>The words of a part of numbers.yaml, such as "point", "minus", "nought-between-digits".</summary>
    public IEnumerable<string> NumberPart(string part) => files.TryGetValue("numbers.yaml", out var root) ? List(root, part) : [];

    /// <summary>Every way to say a unit, without those that begin with a word that is mostly something else ("in").</summary>
    public IEnumerable<string> Unit(UnitOfMeasure unit)
    {
        var dimension = string.Concat(unit.Dimension.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
        var entries = Maps("units.yaml", "units").Where(m => Value(m, "unit") == unit.Symbol && Value(m, "dimension") == dimension).ToLookup(m => Value(m, "everyday") == "true");
        var everyday = entries[true].SelectMany(m => List(m, "words")).ToHashSet(StringComparer.Ordinal);
        return entries[false].SelectMany(m => List(m, "words")).Where(w => !everyday.Contains(w.Split(' ')[0]));
    }

    /// <summary>"degrees" alone: the site's own scale.</summary>
    public IEnumerable<string> Degrees => files.TryGetValue("units.yaml", out var root) ? List(root, "degrees") : [];

    /// <summary>The places where leaks are mostly found, as they are named: "flare nut", "distributor nut".</summary>
    public IEnumerable<string> LeakPlaces => files.TryGetValue("leaks.yaml", out var root) ? List(root, "places") : [];

    /// <summary>Every way to say one of a fact's choices where that fact was asked; the choice itself among them.</summary>
    public IEnumerable<string> Choice(Fact fact, string choice)
    {
        IEnumerable<string> said = [choice.Replace('-', ' ')];
        if (!files.TryGetValue("values.yaml", out var root))
        {
            return said;
        }

        if (fact.Kind == FactKind.YesNo)
        {
            said = said.Concat(List(root, choice));
        }

        if (Map(root, "counted") is { } counted && List(counted, "facts").Contains(fact.Name))
        {
            said = said.Concat(List(counted, choice));
        }

        return Map(root, "values") is { } values && Map(values, fact.Name) is { } choices && Map(choices, choice) is { } words ? said.Concat(List(words, "words")) : said;
    }

    private IEnumerable<YamlMappingNode> Maps(string file, string field) =>
        files.TryGetValue(file, out var root) && DialogYaml.Field(root, field) is YamlSequenceNode list ? list.OfType<YamlMappingNode>() : [];

    private static YamlMappingNode? Map(YamlMappingNode map, string field) => DialogYaml.Field(map, field) as YamlMappingNode;

    private static string? Value(YamlMappingNode map, string field) => (DialogYaml.Field(map, field) as YamlScalarNode)?.Value;

    private static IEnumerable<string> List(YamlMappingNode map, string field) => DialogYaml.Field(map, field) switch
    {
        YamlScalarNode one => Expanded(one),
        YamlSequenceNode many => many.OfType<YamlScalarNode>().SelectMany(Expanded),
        _ => [],
    };

    private static IEnumerable<string> Expanded(YamlScalarNode pattern)
    {
        try
        {
            return PhrasePattern.Expand(pattern.Value ?? "").Select(p => string.Join(' ', p.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        }
        catch (FormatException)
        {
            // The lexicon's own load names the place; a broken pattern says nothing here.
            return [];
        }
    }
}
