using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.App.Commands;

/// <summary><c>understand FILE [--json] [--units us|metric]</c>: what each line says, in the light of the fact it answers.</summary>
public static class UnderstandCommand
{
    private const int BadInput = 2;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "Lines of the fact asked for and what was said, between a tab; either may be empty; - for standard input." };
        var json = new Option<bool>("--json") { Description = "One JSON object a line." };
        var units = new Option<string>("--units") { Description = "What a bare number means: us (psig, degF, lb, micron) or metric (bar, degC, kg).", DefaultValueFactory = _ => "us" };
        units.AcceptOnlyFromAmong("us", "metric");
        var command = new Command("understand", "Say what technicians' messages mean.") { file, json, units };
        command.SetAction(arguments =>
        {
            var path = arguments.GetRequiredValue(file);
            var site = arguments.GetValue(units) == "metric" ? UnitSystem.Metric : UnitSystem.Us;
            using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16);
            try
            {
                var lexicon = Lexicon.Load(Files("lexicon"), Files("walks"));
                using var input = new StreamReader(path == "-" ? Console.OpenStandardInput() : File.OpenRead(path), new UTF8Encoding(false, throwOnInvalidBytes: true));
                return Run(input, output, Console.Error, arguments.GetValue(json), site, lexicon, path);
            }
            catch (DialogDataException broken)
            {
                Console.Error.WriteLine(broken.Message);
                return BadInput;
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
    /// Reads each line of <paramref name="input"/> in order. An unknown fact gives an error object on its own line and the run goes on; a line
    /// without a tab ends it with 2 and one line on <paramref name="error"/> naming file, line and key. Otherwise 0.
    /// </summary>
    /// <param name="file">The name an error gives.</param>
    public static int Run(TextReader input, TextWriter output, TextWriter error, bool json, UnitSystem units, Lexicon lexicon, string file = "-")
    {
        var understander = new Understander(lexicon);
        for (var number = 1; input.ReadLine() is { } line; number++)
        {
            var tab = line.IndexOf('\t', StringComparison.Ordinal);
            if (tab < 0)
            {
                error.WriteLine($"{file}:{number}: utterance: the field is missing; a line is the fact asked for, a tab and what was said");
                return BadInput;
            }

            var name = line[..tab].Trim();
            var asked = FactCatalogue.Find(name);
            if (name.Length > 0 && asked is null)
            {
                var wrong = $"there is no fact '{name}'";
                output.WriteLine(json ? JsonSerializer.Serialize(new { error = wrong }, Json) : "error: " + wrong);
                continue;
            }

            var understood = understander.Understand(line[(tab + 1)..], new(asked, units));
            output.WriteLine(json ? JsonSerializer.Serialize(Shape(understood), Json) : Written(understood));
        }

        return 0;
    }

    private static IEnumerable<DialogFile> Files(string part) =>
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "dialogs", part), "*.yaml").Order(StringComparer.Ordinal).Select(p => new DialogFile(p, File.ReadAllText(p)));

    private static object Shape(Understood understood) => new
    {
        intent = Word(understood.Intent),
        command = understood.Command,
        question = understood.Question,
        readings = understood.Readings.Select(r => new { fact = r.Fact.Name, value = Math.Round(r.Value, 9), unit = r.Unit.Symbol, canonical = Math.Round(r.Canonical, 4) }),
        observations = understood.Observations.Select(o => new { fact = o.Fact.Name, value = o.Value }),
        clarify = understood.Clarify is { } open ? Word(open) : null,
    };

    private static string Written(Understood understood)
    {
        var parts = new List<string> { Word(understood.Intent) };
        parts.AddRange(new[] { understood.Command, understood.Question }.OfType<string>());
        parts.AddRange(understood.Readings.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Fact} {r.Value:0.####} {r.Unit}")));
        parts.AddRange(understood.Observations.Select(o => $"{o.Fact} {o.Value}"));
        if (understood.Clarify is { } open)
        {
            parts.Add($"open: {Word(open)}");
        }

        return string.Join("; ", parts);
    }

    private static string Word<T>(T word)
        where T : struct, Enum => word.ToString().ToLowerInvariant();
}
