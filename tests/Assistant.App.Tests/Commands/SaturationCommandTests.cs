using System.Text.Json;
using Assistant.App.Commands;

namespace Assistant.App.Tests.Commands;

public sealed class SaturationCommandTests
{
    // R-134a at 0 degC: 292.80 kPa, 1294.8 and 14.43 kg/m3 (ASHRAE Handbook - Fundamentals, from memory).
    [Theory]
    [InlineData("R134a\tdew_pressure_at_c\t0", 292_803, 5)]
    [InlineData("134a\tbubble_pressure_at_c\t0", 292_803, 5)]
    [InlineData("R-134a\tdew_temperature_at_pa\t292803", 0, 0.001)]
    [InlineData("r134a\tbubble_temperature_at_pa\t292803", 0, 0.001)]
    [InlineData("R134a\tliquid_density_at_c\t0", 1294.8, 0.1)]
    [InlineData("R134a\tvapour_density_at_c\t0", 14.43, 0.01)]
    public void Each_quantity_is_answered_in_its_unit(string line, double value, double within)
    {
        var answer = Assert.Single(Json(line, exit: 0));
        Assert.Equal(["refrigerant", "quantity", "input", "value"], answer.EnumerateObject().Select(p => p.Name));
        Assert.Equal("R134a", answer.GetProperty("refrigerant").GetString());
        Assert.Equal(line.Split('\t')[1], answer.GetProperty("quantity").GetString());
        Assert.Equal(double.Parse(line.Split('\t')[2], System.Globalization.CultureInfo.InvariantCulture), answer.GetProperty("input").GetDouble());
        Assert.Equal(value, answer.GetProperty("value").GetDouble(), within);
    }

    [Fact]
    public void A_blend_s_dew_pressure_is_below_its_bubble_pressure()
    {
        var answers = Json("R448A\tdew_pressure_at_c\t0\nR448A\tbubble_pressure_at_c\t0", exit: 0);
        Assert.True(answers[0].GetProperty("value").GetDouble() < answers[1].GetProperty("value").GetDouble() - 50_000);
    }

    [Theory]
    [InlineData("R502\tdew_pressure_at_c\t0", "No table for refrigerant \"R502\"; known are R22, ")]
    [InlineData("R22\tdew_point\t0", "No quantity \"dew_point\"; it is one of bubble_pressure_at_c, ")]
    [InlineData("R22\tdew_pressure_at_c\tcold", "\"cold\" is not a number")]
    [InlineData("R22\tdew_pressure_at_c\tNaN", "\"NaN\" is not a number")]
    [InlineData("R22\tdew_pressure_at_c\t200", "R22: saturation temperature 200 degC is outside the table, which runs from -75 to 95 degC")]
    [InlineData("R22\tdew_temperature_at_pa\t-5", "R22: dew pressure -5 Pa absolute is outside the table")]
    public void What_cannot_be_served_is_an_error_on_its_own_line_and_the_run_goes_on(string line, string error)
    {
        var answers = Json(line + "\nR22\tdew_pressure_at_c\t0", exit: 0);
        Assert.Equal(2, answers.Count);
        Assert.StartsWith(error, answers[0].GetProperty("error").GetString(), StringComparison.Ordinal);
        Assert.Equal(497_988, answers[1].GetProperty("value").GetDouble(), 5.0);
    }

    [Theory]
    [InlineData("R22\tdew_pressure_at_c", "in.tsv:2: value: the field is missing")]
    [InlineData("R22", "in.tsv:2: quantity: the field is missing")]
    [InlineData("\tdew_pressure_at_c\t0", "in.tsv:2: refrigerant: the field is missing")]
    [InlineData("", "in.tsv:2: refrigerant: the field is missing")]
    public void A_missing_field_ends_the_run_with_file_line_and_key(string line, string error)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(2, SaturationCommand.Run(new StringReader("R22\tdew_pressure_at_c\t0\n" + line + "\n"), output, errors, json: true, "in.tsv"));
        Assert.StartsWith(error, errors.ToString(), StringComparison.Ordinal);
        Assert.Single(errors.ToString().TrimEnd().Split('\n'));
        Assert.Single(output.ToString().TrimEnd().Split('\n'));
    }

    [Fact]
    public void A_person_reads_the_same_with_its_units()
    {
        using var output = new StringWriter();
        Assert.Equal(0, SaturationCommand.Run(new StringReader("R-134a\tdew_temperature_at_pa\t292803.18\nR502\tdew_pressure_at_c\t0"), output, TextWriter.Null, json: false));
        var lines = output.ToString().TrimEnd().Split('\n');
        Assert.Equal("R134a dew_temperature_at_pa 292803.18 Pa absolute: 0 degC", lines[0].TrimEnd());
        Assert.StartsWith("error: No table for refrigerant", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void An_unreadable_file_ends_with_2() =>
        Assert.Equal(2, SaturationCommand.Create().Parse(["/no/such/file.tsv", "--json"]).Invoke());

    private static List<JsonElement> Json(string lines, int exit)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(exit, SaturationCommand.Run(new StringReader(lines), output, error, json: true));
        Assert.Empty(error.ToString());
        return [.. output.ToString().TrimEnd().Split('\n').Select(l => JsonDocument.Parse(l).RootElement)];
    }
}
