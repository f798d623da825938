using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Assistant.App.Commands;

/// <summary><c>saturation FILE [--json]</c>: bubble and dew points and densities, one a line.</summary>
public static class SaturationCommand
{
    private const int BadInput = 2;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "Lines of refrigerant, quantity and value between tabs; - for standard input." };
        var json = new Option<bool>("--json") { Description = "One JSON object a line." };
        var units = new Option<string>("--units") { Description = "Taken for the sake of the other commands: each quantity names its own unit." };
        units.AcceptOnlyFromAmong("us", "metric");
        var command = new Command("saturation", "Look up saturation pressures, temperatures and densities.") { file, json, units };
        command.SetAction(arguments =>
        {
            var path = arguments.GetRequiredValue(file);
            using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16);
            try
            {
                using var input = new StreamReader(path == "-" ? Console.OpenStandardInput() : File.OpenRead(path), new UTF8Encoding(false, throwOnInvalidBytes: true));
                return Run(input, output, Console.Error, arguments.GetValue(json), path);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or DecoderFallbackException)
            {
                Console.Error.WriteLine($"{path}:1: file: it cannot be read: {failure.Message}");
                return BadInput;
            }
        });
        return command;
    }

    /// <summary>
    /// Answers each line of <paramref name="input"/> in order. What cannot be served gives an error object on its own line and the run goes
    /// on; a line that lacks a field ends it with 2 and one line on <paramref name="error"/> naming file, line and key. Otherwise 0.
    /// </summary>
    /// <param name="file">The name an error gives.</param>
    public static int Run(TextReader input, TextWriter output, TextWriter error, bool json, string file = "-")
    {
        for (var number = 1; input.ReadLine() is { } text; number++)
        {
            if (SaturationLine.Parse(text, out var missing) is not { } line)
            {
                error.WriteLine($"{file}:{number}: {missing}: the field is missing; a line is refrigerant, quantity and value between tabs");
                return BadInput;
            }

            var (result, wrong) = line.Evaluate();
            output.WriteLine(json
                ? (result is null ? JsonSerializer.Serialize(new { error = wrong }, Json) : JsonSerializer.Serialize(result, Json))
                : (result is null ? "error: " + wrong : Written(result)));
        }

        return 0;
    }

    private static string Written(SaturationResult result)
    {
        var (asked, unit) = result.Quantity switch
        {
            "dew_pressure_at_c" or "bubble_pressure_at_c" => ("degC", "Pa absolute"),
            "liquid_density_at_c" or "vapour_density_at_c" => ("degC", "kg/m3"),
            _ => ("Pa absolute", "degC"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{result.Refrigerant} {result.Quantity} {result.Input:0.######} {asked}: {result.Value:0.####} {unit}");
    }
}
