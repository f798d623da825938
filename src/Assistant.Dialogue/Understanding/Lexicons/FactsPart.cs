using Assistant.Dialogue.Files;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>One thing a fact's name can mean.</summary>
/// <param name="Loose">Gives way to a unit of another kind, and to the facts it yields to where one of them was asked.</param>
internal sealed record FactName(Fact Fact, bool Loose, IReadOnlyList<Fact> YieldsTo);

/// <summary>Reads facts.yaml: what each fact is called, the places that turn one into its neighbour, and the in-and-out pairs.</summary>
internal sealed class FactsPart(LexiconFile file)
{
    public PhraseTable<FactName> Names { get; } = new();

    /// <summary>"at the coil": which fact becomes which.</summary>
    public PhraseTable<IReadOnlyDictionary<Fact, Fact>> Places { get; } = new();

    public Dictionary<Fact, Fact> OutOf { get; } = [];

    public PhraseTable<bool> InWords { get; } = new();

    public PhraseTable<bool> OutWords { get; } = new();

    public Dictionary<string, Fact> NamedByUnit { get; } = [];

    /// <summary>The single words of quantities' names, for mending slips.</summary>
    public List<(string Text, int Word)> Spelt { get; } = [];

    public void Read()
    {
        file.AllowOnly("facts", "places", "in-and-out", "in", "out", "units-that-name");
        foreach (var (name, at, entry) in file.Entries("facts"))
        {
            if (Known(name, at) is { } fact && entry is YamlMappingNode map)
            {
                ReadNames(fact, map);
            }
        }

        foreach (var place in file.Maps("places"))
        {
            ReadPlace(place);
        }

        foreach (var (name, at, entry) in file.Entries("in-and-out"))
        {
            if (Known(name, at) is { } inner && Known(TextOf(entry), entry) is { } outer)
            {
                OutOf.Add(inner, outer);
            }
        }

        foreach (var (phrase, _, _) in file.Phrases("in"))
        {
            InWords.Add(phrase, true);
        }

        foreach (var (phrase, _, _) in file.Phrases("out"))
        {
            OutWords.Add(phrase, true);
        }

        foreach (var (symbol, at, entry) in file.Entries("units-that-name"))
        {
            if (UnitOfMeasure.All.All(u => u.Symbol != symbol))
            {
                file.Report(DefectKind.BadValue, at, symbol, $"no unit '{symbol}'");
            }
            else if (Known(TextOf(entry), entry) is { } fact)
            {
                NamedByUnit.Add(symbol, fact);
            }
        }
    }

    private void ReadNames(Fact fact, YamlMappingNode map)
    {
        file.AllowOnly(map, fact.Name, "names", "loose", "yields-to");
        var yields = file.Plain(map, fact.Name, "yields-to").Select(t => Known(t.Text, t.At)).OfType<Fact>().ToList();
        foreach (var field in new[] { "names", "loose" })
        {
            foreach (var (phrase, text, at) in file.Phrases(map, fact.Name, field))
            {
                if (fact.IsQuantity && Names.Exactly(phrase).FirstOrDefault(n => n.Fact.IsQuantity && n.Fact != fact) is { } other)
                {
                    file.Report(DefectKind.DuplicateId, at, fact.Name, $"'{text}' already names {other.Fact}");
                    continue;
                }

                if (Names.Exactly(phrase).All(n => n.Fact != fact))
                {
                    Spelt.AddRange(LexiconFile.SpeltWords(text, phrase));
                    Names.Add(phrase, new(fact, field == "loose", yields));
                }
            }
        }
    }

    private void ReadPlace(YamlMappingNode place)
    {
        file.AllowOnly(place, "places", "words", "turns");
        var turns = new Dictionary<Fact, Fact>();
        if (DialogYaml.Field(place, "turns") is YamlMappingNode map)
        {
            foreach (var (from, to) in map)
            {
                if (Known(TextOf(from), from) is { } before && Known(TextOf(to), to) is { } after)
                {
                    turns[before] = after;
                }
            }
        }

        foreach (var (phrase, _, _) in file.Phrases(place, "places", "words"))
        {
            Places.Add(phrase, turns);
        }
    }

    private Fact? Known(string name, YamlNode at)
    {
        var fact = FactCatalogue.Find(name);
        if (fact is null)
        {
            file.Report(DefectKind.UnknownFact, at, name, $"there is no fact '{name}'");
        }

        return fact;
    }

    private static string TextOf(YamlNode node) => (node as YamlScalarNode)?.Value ?? "";
}
