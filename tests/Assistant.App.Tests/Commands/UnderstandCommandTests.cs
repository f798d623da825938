using System.Text.Json;
using Assistant.App.Commands;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Quantities;

namespace Assistant.App.Tests.Commands;

public sealed class UnderstandCommandTests
{
    private static readonly Lexicon Lexicon = Lexicon.Load(
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "dialogs", "lexicon"), "*.yaml").Select(p => new DialogFile(p, File.ReadAllText(p))));

    [Fact]
    public void Every_key_is_there_even_where_it_holds_nothing()
    {
        var (_, output, _) = Run("suction_pressure\tten pounds\n", json: true);

        var line = JsonDocument.Parse(output).RootElement;
        Assert.Equal(["intent", "command", "question", "readings", "observations", "clarify"], line.EnumerateObject().Select(p => p.Name));
        Assert.Equal("answer", line.GetProperty("intent").GetString());
        Assert.Equal(JsonValueKind.Null, line.GetProperty("command").ValueKind);
        var reading = line.GetProperty("readings")[0];
        Assert.Equal("psig", reading.GetProperty("unit").GetString());
        Assert.Equal(68.9476, reading.GetProperty("canonical").GetDouble());
    }

    [Fact]
    public void The_site_decides_what_a_bare_number_means()
    {
        var (_, output, _) = Run("box_temperature\t3\n", json: true, UnitSystem.Metric);

        Assert.Contains("\"unit\":\"degC\",\"canonical\":3", output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_fact_is_an_error_on_its_own_line_and_the_run_goes_on()
    {
        var (code, output, _) = Run("colour\tgreen\n\treport\n", json: true);

        var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(0, code);
        Assert.Equal("{\"error\":\"there is no fact 'colour'\"}", lines[0].Trim());
        Assert.Contains("\"command\":\"report\"", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_without_a_tab_ends_the_run_and_names_file_line_and_key()
    {
        var (code, _, error) = Run("\thelp\nno tab here\n", json: true);

        Assert.Equal(2, code);
        Assert.StartsWith("said.tsv:2: utterance:", error, StringComparison.Ordinal);
    }

    [Fact]
    public void For_a_person_a_line_reads_in_plain_words()
    {
        var (_, output, _) = Run("suction_pressure\t22 over 201, glass is flashing\n", json: false);

        Assert.Equal("answer; suction_pressure 22 psig; discharge_pressure 201 psig; sight_glass flashing", output.Trim());
    }

    private static (int Code, string Output, string Error) Run(string input, bool json, UnitSystem units = UnitSystem.Us)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = UnderstandCommand.Run(new StringReader(input), output, error, json, units, Lexicon, "said.tsv");
        return (code, output.ToString(), error.ToString());
    }
}
