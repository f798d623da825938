using System.CommandLine;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Trade.Quantities;

namespace Assistant.App.Commands;

/// <summary><c>assess FILE [--json] [--units us|metric]</c>: what a set of facts tells, one set a line.</summary>
public static class AssessCommand
{
    private const int BadInput = 2;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    // A derived value that the facts do not allow is left out; every other key always stands.
    private static readonly JsonSerializerOptions Derived = new(Json) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "JSON lines of id and facts; - for standard input." };
        var json = new Option<bool>("--json") { Description = "One JSON object a line." };
        var units = new Option<string>("--units") { Description = "What a bare number means.", DefaultValueFactory = _ => "us" };
        units.AcceptOnlyFromAmong("us", "metric");
        var command = new Command("assess", "Say what sets of facts tell: faults with their reasons, what follows from the readings, cautions, and what to read next.") { file, json, units };
        command.SetAction(arguments =>
        {
            var path = arguments.GetRequiredValue(file);
            using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false), 1 << 16);
            try
            {
                using var input = new StreamReader(path == "-" ? Console.OpenStandardInput() : File.OpenRead(path), new UTF8Encoding(false, throwOnInvalidBytes: true));
                return Run(input, output, Console.Error, arguments.GetValue(json), arguments.GetValue(units) == "metric" ? UnitSystem.Metric : UnitSystem.Us, path);
            }
            catch (DialogDataException data)
            {
                Console.Error.WriteLine(data.Defects[0]);
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
    /// Answers each line of <paramref name="input"/> in order. A broken line, or one that lacks a field, ends it with 2 and one line
    /// on <paramref name="error"/> naming file, line and key. Otherwise 0.
    /// </summary>
    /// <param name="units">What a bare number means, and the units the reasons are said in.</param>
    /// <param name="file">The name an error gives.</param>
    public static int Run(TextReader input, TextWriter output, TextWriter error, bool json, UnitSystem units, string file = "-")
    {
        var assessment = new FactAssessment(new Understander(Lexicon.Load(Files("lexicon"))), PhraseBook.Load(Files("phrases")), units);
        for (var number = 1; input.ReadLine() is { } text; number++)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                continue;
            }

            if (AssessLine.Parse(text, out var key, out var wrong) is not { } line)
            {
                error.WriteLine($"{file}:{number}: {key}: {wrong}");
                return BadInput;
            }

            var result = assessment.Of(line);
            output.WriteLine(json ? Serialized(result) : Written(result));
        }

        return 0;
    }

    private static string Serialized(AssessResult result) => JsonSerializer.Serialize(
        new
        {
            result.Id,
            result.Faults,
            Derived = JsonSerializer.SerializeToElement(result.Derived, Derived),
            result.Cautions,
            result.Next,
            result.Rejected,
        },
        Json);

    private static string Written(AssessResult result)
    {
        var text = new StringBuilder(result.Id).AppendLine();
        foreach (var fault in result.Faults)
        {
            text.AppendLine($"  {fault.Code}: {fault.Standing}");
            text.AppendJoin("", fault.Because.Select(r => $"    + {r}{Environment.NewLine}"));
            text.AppendJoin("", fault.Against.Select(r => $"    - {r}{Environment.NewLine}"));
        }

        text.AppendJoin("", result.Rejected.Select(r => $"  ? {r.Fact} \"{r.Text}\": {r.Why}{Environment.NewLine}"));
        text.AppendJoin("", result.Cautions.Select(c => $"  ! {c.Text}{Environment.NewLine}"));
        return text.Append($"  next: {result.Next ?? "nothing more"}").ToString();
    }

    private static IEnumerable<DialogFile> Files(string part) =>
        Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "dialogs", part), "*.yaml")
            .Order(StringComparer.Ordinal)
            .Select(f => new DialogFile($"dialogs/{part}/{Path.GetFileName(f)}", File.ReadAllText(f)));
}
