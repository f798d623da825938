using Assistant.Dialogue.Files;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>One thing an observed word can mean.</summary>
/// <param name="Alone">It says by itself which fact it is.</param>
/// <param name="Denied">What it becomes when it is denied; null where that leaves the value open.</param>
internal sealed record ValueWord(Fact Fact, string Value, bool Alone, string? Denied);

/// <summary>What a word says about things that are told by counting.</summary>
internal enum CountWord
{
    All,
    Some,
    None,
    Going,
    Stopped,
}

/// <summary>Reads values.yaml: how the choices, the yes and no, and the counted things are said.</summary>
internal sealed class ValuesPart(LexiconFile file)
{
    public PhraseTable<ValueWord> Values { get; } = new();

    public PhraseTable<bool> YesNo { get; } = new();

    public PhraseTable<CountWord> Counts { get; } = new();

    public HashSet<Fact> Counted { get; } = [];

    /// <summary>What stands between a part and its whole: "1 of 2", "2 out of 3".</summary>
    public PhraseTable<bool> Of { get; } = new();

    /// <summary>Facts that a number in this unit tells: volts at the solenoid are a yes, none are a no.</summary>
    public Dictionary<Fact, string> ToldBy { get; } = [];

    public void Read()
    {
        file.AllowOnly("yes", "no", "values", "told-by", "counted");
        foreach (var word in new[] { "yes", "no" })
        {
            foreach (var (phrase, _, _) in file.Phrases(word))
            {
                YesNo.Add(phrase, word == "yes");
            }
        }

        foreach (var (name, at, entry) in file.Entries("values"))
        {
            if (FactCatalogue.Find(name) is not { IsQuantity: false } fact || entry is not YamlMappingNode map)
            {
                file.Report(DefectKind.UnknownFact, at, name, $"'{name}' is no fact with choices");
                continue;
            }

            foreach (var (value, of) in map)
            {
                ReadValue(fact, ((YamlScalarNode)value).Value ?? "", value, of);
            }
        }

        foreach (var (name, at, unit) in file.Entries("told-by"))
        {
            var symbol = (unit as YamlScalarNode)?.Value;
            if (FactCatalogue.Find(name) is { Kind: FactKind.YesNo } fact && UnitOfMeasure.All.Any(u => u.Symbol == symbol))
            {
                ToldBy.Add(fact, symbol!);
            }
            else
            {
                file.Report(DefectKind.BadValue, at, name, $"'{name}: {symbol}' is no yes/no fact with a unit");
            }
        }

        if (DialogYaml.Field(file.Root, "counted") is YamlMappingNode counted)
        {
            ReadCounted(counted);
        }
    }

    private void ReadValue(Fact fact, string value, YamlNode at, YamlNode entry)
    {
        if (!fact.Choices.Contains(value) || entry is not YamlMappingNode map)
        {
            file.Report(DefectKind.UnknownChoice, at, fact.Name, $"{fact} has no '{value}'; it has {string.Join(", ", fact.Choices)}");
            return;
        }

        file.AllowOnly(map, value, "words", "alone", "not");
        var denied = file.Text(map, value, "not");
        if (denied is not null && !fact.Choices.Contains(denied))
        {
            file.Report(DefectKind.UnknownChoice, at, fact.Name, $"{fact} has no '{denied}'");
        }

        foreach (var field in new[] { "alone", "words" })
        {
            foreach (var (phrase, text, where) in file.Phrases(map, value, field))
            {
                var others = Values.Exactly(phrase).Where(v => v.Fact == fact).ToList();
                if (others.FirstOrDefault(v => v.Value != value) is { } other)
                {
                    file.Report(DefectKind.DuplicateId, where, fact.Name, $"'{text}' already means {other.Value}");
                }
                else if (others.Count == 0)
                {
                    Values.Add(phrase, new(fact, value, field == "alone", denied));
                }
            }
        }
    }

    private void ReadCounted(YamlMappingNode map)
    {
        file.AllowOnly(map, "counted", "facts", "all", "some", "none", "going", "stopped", "of");
        foreach (var (phrase, _, _) in file.Phrases(map, "counted", "of"))
        {
            Of.Add(phrase, true);
        }

        foreach (var (name, at) in file.Plain(map, "counted", "facts"))
        {
            if (FactCatalogue.Find(name) is { } fact)
            {
                Counted.Add(fact);
            }
            else
            {
                file.Report(DefectKind.UnknownFact, at, name, $"there is no fact '{name}'");
            }
        }

        foreach (var word in Enum.GetValues<CountWord>())
        {
            foreach (var (phrase, text, at) in file.Phrases(map, "counted", word.ToString().ToLowerInvariant()))
            {
                if (Counts.Exactly(phrase) is [var other, ..] && other != word)
                {
                    file.Report(DefectKind.DuplicateId, at, "counted", $"'{text}' already means {other}");
                }
                else
                {
                    Counts.Add(phrase, word);
                }
            }
        }
    }
}
