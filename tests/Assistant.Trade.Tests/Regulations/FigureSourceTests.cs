using System.Text.Json;
using Assistant.Trade.Regulations;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>No figure of a rule stands there without saying whether it was read or is recalled.</summary>
public class FigureSourceTests
{
    private static readonly string[] AboutTheFile = ["dateRead", "validFrom", "validTo"];

    public static TheoryData<string> Rules { get; } = [.. RegulationLibrary.All.Select(r => r.Rule)];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_figure_has_a_source(string rule)
    {
        using var file = JsonDocument.Parse(Text(rule));
        var figures = Figures(file.RootElement, "").ToList();
        var sources = RegulationLibrary.All.Single(r => r.Rule == rule).Figures;

        Assert.NotEmpty(figures);
        Assert.All(figures, figure => Assert.Contains(sources, s => Covers(s.Figure, figure)));
        Assert.All(sources, s => Assert.Contains(figures, figure => Covers(s.Figure, figure)));
        Assert.All(sources, s => Assert.False(string.IsNullOrWhiteSpace(s.Source)));
    }

    [Fact]
    public void A_rule_counts_as_recalled_where_most_of_its_figures_are() => Assert.All(RegulationLibrary.All, rule =>
    {
        var recalled = rule.Figures.Count(f => f.Basis == SourceBasis.FromMemory);
        Assert.Equal(recalled * 2 > rule.Figures.Length ? SourceBasis.FromMemory : SourceBasis.Published, rule.Basis);
    });

    private static bool Covers(string source, string figure) => figure == source || figure.StartsWith(source + ".", StringComparison.Ordinal);

    /// <summary>The keys of all numbers and days: what a rule decides by.</summary>
    private static IEnumerable<string> Figures(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().Where(p => p.Name != "figures" && !AboutTheFile.Contains(p.Name))
            .SelectMany(p => Figures(p.Value, path.Length == 0 ? p.Name : $"{path}.{p.Name}")),
        JsonValueKind.Array => element.EnumerateArray().SelectMany((item, i) => Figures(item, $"{path}[{i}]")),
        JsonValueKind.Number => [path],
        JsonValueKind.String when DateOnly.TryParseExact(element.GetString(), "yyyy-MM-dd", out _) => [path],
        _ => [],
    };

    private static string Text(string rule)
    {
        using var reader = new StreamReader(typeof(RegulationLibrary).Assembly.GetManifestResourceStream($"regulations/{rule}.json")!);
        return reader.ReadToEnd();
    }
}
