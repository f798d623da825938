using Assistant.Trade.Regulations;

namespace Assistant.Trade.Tests.Regulations;

public class RegulationJsonTests
{
    private const string File = "us-test.json";

    private const string Good = """
        {
          "shape": "leak-detection", "rule": "us-test", "title": "Invented", "jurisdiction": "united-states", "source": "invented",
          "basis": "from-memory", "dateRead": "2026-11-25", "validFrom": "2026-01-01", "validTo": null, "underRevision": false, "note": "invented", "figures": [ { "figure": "gwpOver", "basis": "from-memory", "source": "invented" } ],
          "paragraph": "(a)", "uses": ["other"], "gwpOver": 53, "fullChargeFromPounds": 1500,
          "installedFrom": "2017-01-01", "newFrom": "2026-01-01", "newWithinDays": 30, "existingBy": "2027-01-01"
        }
        """;

    private const string GoodGwp = """
        {
          "title": "Invented", "source": "invented", "basis": "from-memory", "dateRead": "2026-11-25", "note": "invented",
          "components": [ { "name": "R1", "alsoCalled": [], "kind": "natural", "gwp": 53, "euGwp": null } ]
        }
        """;

    [Fact]
    public void A_whole_file_is_read() => Assert.Equal("us-test", RegulationJson.ReadRule(File, Good).Rule);

    [Theory]
    [InlineData("\"note\": \"invented\"", "\"note\": \"invented\", \"remark\": 1", "remark")]
    [InlineData("\"note\": \"invented\",", "", "note")]
    [InlineData("\"note\": \"invented\"", "\"note\": null", "note")]
    [InlineData("\"note\": \"invented\"", "\"note\": \"invented\", \"note\": \"again\"", "note")]
    [InlineData("\"newWithinDays\": 30", "\"newWithinDays\": \"thirty\"", "$.newWithinDays")]
    [InlineData("\"existingBy\": \"2027-01-01\"", "\"existingBy\": \"2027-13-01\"", "$.existingBy")]
    [InlineData("[\"other\"]", "[\"florist\"]", "$.uses[0]")]
    [InlineData("[\"other\"]", "[3]", "$.uses[0]")]
    [InlineData("\"figure\": \"gwpOver\",", "", "figure")]
    [InlineData("\"leak-detection\"", "\"horoscope\"", "horoscope")]
    [InlineData("\"rule\": \"us-test\"", "\"rule\": \"us-other\"", "$.rule")]
    [InlineData("\"validTo\": null", "\"validTo\": \"2025-12-31\"", "$.validTo")]
    public void A_mistake_names_the_file_and_the_key(string right, string wrong, string key)
    {
        Assert.Contains(right, Good, StringComparison.Ordinal);
        var error = Assert.Throws<RegulationDataException>(() => RegulationJson.ReadRule(File, Good.Replace(right, wrong, StringComparison.Ordinal)));
        Assert.Equal(File, error.File);
        Assert.StartsWith(File + ": $", error.Message, StringComparison.Ordinal);
        Assert.Contains(key, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("{}")]
    public void What_is_no_rule_names_the_file(string text) =>
        Assert.Equal(File, Assert.Throws<RegulationDataException>(() => RegulationJson.ReadRule(File, text)).File);

    [Fact]
    public void A_table_of_potentials_is_read_as_strictly()
    {
        Assert.Equal("invented", RegulationJson.ReadGwp("gwp.json", GoodGwp).Source);
        var unknown = Assert.Throws<RegulationDataException>(() => RegulationJson.ReadGwp("gwp.json", GoodGwp.Replace("\"gwp\": 53", "\"gwp\": 53, \"odp\": 0", StringComparison.Ordinal)));
        Assert.Contains("odp", unknown.Message, StringComparison.Ordinal);
        var negative = Assert.Throws<RegulationDataException>(() => RegulationJson.ReadGwp("gwp.json", GoodGwp.Replace("53", "-53", StringComparison.Ordinal)));
        Assert.Equal("$.components.R1", negative.Key);
    }

    // 40 CFR 84.106: a substitute counts with a global warming potential greater than 53.
    [Theory]
    [InlineData("52.99", false)]
    [InlineData("53", false)]
    [InlineData("53.01", true)]
    public void A_substitute_counts_above_53_and_not_at_it(string gwp, bool counts)
    {
        var table = RegulationJson.ReadGwp("gwp.json", GoodGwp.Replace("53", gwp, StringComparison.Ordinal));
        Assert.Equal(counts, table.IsHfcOrSubstituteOver([new("R1", 1)], 53));
    }
}
