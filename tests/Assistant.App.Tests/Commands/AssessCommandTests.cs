using System.Text.Json;
using Assistant.App.Commands;
using Assistant.Trade.Quantities;

namespace Assistant.App.Tests.Commands;

public class AssessCommandTests
{
    private const string Short = """
        {"id": "w1", "facts": {"refrigerant": "R-404A", "application": "cooler", "box_temperature": "44F", "setpoint": "36F", "calling_for_cooling": "yes", "coil_ice": "distributor-end", "evaporator_fans": "all", "ambient_temperature": "75 deg F", "compressor": "running", "sight_glass": "flashing", "suction_pressure": "38 psig", "discharge_pressure": "225psig", "suction_line_temperature_at_bulb": "38 F", "liquid_line_temperature": "98F"}}
        """;

    [Fact]
    public void A_set_of_facts_gives_faults_with_reasons_values_cautions_and_the_next_fact()
    {
        var result = Json(Short);

        Assert.Equal("w1", result.GetProperty("id").GetString());
        var first = result.GetProperty("faults")[0];
        Assert.Equal("undercharge", first.GetProperty("code").GetString());
        Assert.Contains("The sight glass is flashing.", first.GetProperty("because").EnumerateArray().Select(r => r.GetString()));
        Assert.Equal(JsonValueKind.Array, first.GetProperty("against").ValueKind);

        // R404A at 38 psig: dew 5.4 degF / -14.8 degC by the embedded table; the bulb stands at 38 degF.
        Assert.InRange(result.GetProperty("derived").GetProperty("superheat_k").GetDouble(), 17, 19);
        Assert.Empty(result.GetProperty("rejected").EnumerateArray());
    }

    [Fact]
    public void Without_facts_there_is_exactly_not_enough_evidence_and_every_key_stands()
    {
        var result = Json("""{"id": "empty", "facts": {}}""");

        var fault = Assert.Single(result.GetProperty("faults").EnumerateArray());
        Assert.Equal("not-enough-evidence", fault.GetProperty("code").GetString());
        Assert.Equal("possible", fault.GetProperty("standing").GetString());
        Assert.Empty(result.GetProperty("derived").EnumerateObject());
        Assert.Equal(["id", "faults", "derived", "cautions", "next", "rejected"], result.EnumerateObject().Select(p => p.Name));
    }

    [Theory]
    [InlineData("colour_of_the_door", "blue", "no fact of that name")]
    [InlineData("suction_pressure", "pretty low", "can not be read")]
    [InlineData("box_temperature", "400 F", "can not be")]
    public void What_can_not_be_taken_is_rejected_with_its_text_and_the_rest_is_assessed(string fact, string text, string why)
    {
        var result = Json("{\"id\": \"r\", \"facts\": {\"" + fact + "\": \"" + text + "\", \"coil_ice\": \"blocked\"}}");

        var rejected = Assert.Single(result.GetProperty("rejected").EnumerateArray());
        Assert.Equal(fact, rejected.GetProperty("fact").GetString());
        Assert.Equal(text, rejected.GetProperty("text").GetString());
        Assert.Contains(why, rejected.GetProperty("why").GetString(), StringComparison.Ordinal);
        Assert.Contains("coil-iced", result.GetProperty("faults").EnumerateArray().Select(f => f.GetProperty("code").GetString()));
    }

    [Theory]
    [InlineData("{\"id\": \"a\", \"facts\": {", "json")]
    [InlineData("{\"facts\": {}}", "id")]
    [InlineData("{\"id\": \"a\"}", "facts")]
    public void A_broken_line_ends_the_run_with_2_and_one_line_naming_file_line_and_key(string line, string key)
    {
        var (code, output, error) = Run("""{"id": "ok", "facts": {}}""" + "\n" + line, json: true);

        Assert.Equal(2, code);
        Assert.Single(output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith($"cases.jsonl:2: {key}:", error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void A_bare_number_means_the_units_that_were_asked_for()
    {
        const string line = """{"id": "b", "facts": {"refrigerant": "R134a", "discharge_pressure": "9"}}""";

        // 9 bar gauge of R134a condenses at 39 degC (dew, table); 9 psig at -17.
        Assert.InRange(Json(line, UnitSystem.Metric).GetProperty("derived").GetProperty("saturated_condensing_temperature_c").GetDouble(), 38.5, 40);
        Assert.InRange(Json(line).GetProperty("derived").GetProperty("saturated_condensing_temperature_c").GetDouble(), -18, -14);
    }

    [Fact]
    public void For_a_person_the_same_is_written_as_lines()
    {
        var (code, output, _) = Run(Short, json: false);

        Assert.Equal(0, code);
        Assert.Contains("undercharge:", output, StringComparison.Ordinal);
        Assert.Contains("+ The sight glass is flashing.", output, StringComparison.Ordinal);
    }

    private static JsonElement Json(string line, UnitSystem units = UnitSystem.Us)
    {
        var (code, output, error) = Run(line, json: true, units);
        Assert.Equal("", error);
        Assert.Equal(0, code);
        return JsonDocument.Parse(output).RootElement;
    }

    private static (int Code, string Output, string Error) Run(string input, bool json, UnitSystem units = UnitSystem.Us)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = AssessCommand.Run(new StringReader(input), output, error, json, units, "cases.jsonl");
        return (code, output.ToString(), error.ToString());
    }
}
