using System.Text.Json;
using Assistant.Dialogue.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Understanding;

/// <summary>The invented lines of tests/data/utterances: nearly all exactly right, and never a wrong value taken.</summary>
public sealed class UtteranceCorpusTests
{
    private const double FewestExact = 0.99;

    public static TheoryData<string> Categories => [.. NamesIn(""), .. NamesIn("second"), .. NamesIn("third")];

    private static string Folder => Path.Combine(LexiconFiles.Root, "tests", "data", "utterances");

    [Theory]
    [InlineData("", 450)]
    [InlineData("second", 700)]
    [InlineData("third", 400)]
    public void At_least_ninety_nine_lines_of_a_hundred_are_understood_exactly(string corpus, int fewest)
    {
        var lines = NamesIn(corpus).SelectMany(Read).ToList();
        var missed = lines.Where(l => !l.IsExact(l.Understood())).Select(l => $"{l.Id}: {l.Text}").ToList();

        Assert.True(lines.Count > fewest);
        Assert.True(missed.Count <= lines.Count * (1 - FewestExact), string.Join('\n', missed));
    }

    [Theory]
    [MemberData(nameof(Categories))]
    public void No_wrong_value_is_taken(string category)
    {
        var wrong = Read(category).Where(l => !l.TakesOnlyWhatWasSaid(l.Understood())).Select(l => $"{l.Id}: {l.Text}");

        Assert.Empty(wrong);
    }

    private static IEnumerable<string> NamesIn(string corpus) =>
        Directory.GetFiles(Path.Combine(Folder, corpus), "*.tsv").Select(p => Path.Combine(corpus, Path.GetFileNameWithoutExtension(p))).Order(StringComparer.Ordinal);

    private static IEnumerable<Line> Read(string category) =>
        File.ReadAllText(Path.Combine(Folder, category + ".tsv")).Split('\n').Where(l => l.Length > 0).Select(Line.Parse);

    private sealed record Line(string Id, Fact? Asked, string Text, JsonElement Meaning)
    {
        public static Line Parse(string line)
        {
            var fields = line.Split('\t');
            return new(fields[0], FactCatalogue.Find(fields[2]), fields[3], JsonDocument.Parse(fields[4]).RootElement);
        }

        public Understood Understood() =>
            LexiconFiles.Understander.Understand(Text, new(Asked, Id.EndsWith("-metric", StringComparison.Ordinal) ? UnitSystem.Metric : UnitSystem.Us));

        public bool IsExact(Understood got) =>
            Same("intent", got.Intent.ToString()) && Same("command", got.Command) && Same("question", got.Question) && Same("clarify", got.Clarify?.ToString())
            && got.Readings.Length == Readings.Count && TakesOnlyWhatWasSaid(got)
            && got.Observations.Select(o => $"{o.Fact}={o.Value}").ToHashSet().SetEquals(
                Meaning.GetProperty("observations").EnumerateArray().Select(o => $"{o.GetProperty("fact").GetString()}={o.GetProperty("value").GetString()}"));

        public bool TakesOnlyWhatWasSaid(Understood got) => got.Readings.All(r =>
            Readings.TryGetValue(r.Fact.Name, out var said) && Math.Abs(said.Canonical - r.Canonical) <= 0.001
            && said.Unit == r.Unit.Symbol && Math.Abs(said.Value - r.Value) <= 1e-9);

        private Dictionary<string, (double Value, string Unit, double Canonical)> Readings => Meaning.GetProperty("readings").EnumerateArray().ToDictionary(
            r => r.GetProperty("fact").GetString()!,
            r => (r.GetProperty("value").GetDouble(), r.GetProperty("unit").GetString()!, r.GetProperty("canonical").GetDouble()));

        private bool Same(string field, string? got) => string.Equals(Meaning.GetProperty(field).GetString(), got, StringComparison.OrdinalIgnoreCase);
    }
}
