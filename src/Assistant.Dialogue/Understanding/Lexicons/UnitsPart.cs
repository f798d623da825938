using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Units;
using Assistant.Trade.Quantities;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads units.yaml: the words for each unit.</summary>
internal sealed class UnitsPart(LexiconFile file)
{
    public PhraseTable<UnitWord> Units { get; } = new();

    public HashSet<int> Thousands { get; } = [];

    /// <summary>"in C", "to psi", "how many psi": what stands before the unit a conversion asks for.</summary>
    public HashSet<int> TargetMarks { get; } = [];

    /// <summary>The single words of units, for mending slips.</summary>
    public List<(string Text, int Word)> Spelt { get; } = [];

    public void Read()
    {
        file.AllowOnly("units", "degrees", "thousands", "asked-for");
        foreach (var entry in file.Maps("units"))
        {
            var symbol = file.Text(entry, "units", "unit") ?? "";
            file.AllowOnly(entry, symbol, "unit", "dimension", "everyday", "words");
            if (UnitOf(entry, symbol) is not { } unit)
            {
                file.Report(DefectKind.BadValue, entry, symbol, $"no unit '{symbol}' of dimension '{file.Text(entry, symbol, "dimension")}'");
                continue;
            }

            var everyday = file.Text(entry, symbol, "everyday") == "true";
            foreach (var (phrase, text, _) in file.Phrases(entry, symbol, "words"))
            {
                Spelt.AddRange(LexiconFile.SpeltWords(text, phrase));
                Units.Add(phrase, new(unit, everyday));
            }
        }

        foreach (var (phrase, _, _) in file.Phrases("degrees"))
        {
            Units.Add(phrase, new(null));
        }

        TargetMarks.UnionWith(file.Words("asked-for").Select(w => w.Word));
        Thousands.UnionWith(file.Words("thousands").Select(w => w.Word));
    }

    private UnitOfMeasure? UnitOf(YamlMappingNode entry, string symbol)
    {
        var dimension = file.Text(entry, symbol, "dimension")?.Replace(" ", "", StringComparison.Ordinal);
        return Enum.TryParse<Dimension>(dimension, ignoreCase: true, out var found) ? UnitOfMeasure.Find(symbol, found) : null;
    }
}
