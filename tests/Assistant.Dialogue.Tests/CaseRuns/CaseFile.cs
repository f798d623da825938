using System.Text.Json;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.CaseRuns;

/// <summary>The computed fault cases, their texts read as answers to the facts they stand under.</summary>
internal static class CaseFile
{
    public static IReadOnlyList<FaultCase> Cases { get; } = Of("public.jsonl");

    /// <summary>Cases written by hand, by somebody who had not seen the rules.</summary>
    public static IReadOnlyList<FaultCase> Hand { get; } = Of("hand.jsonl");

    /// <summary>More of them, written in other words and with fewer facts after the first were repaired.</summary>
    public static IReadOnlyList<FaultCase> HandAgain { get; } = [.. Of("hand2.jsonl"), .. Of("hand3.jsonl"), .. Of("hand4.jsonl")];

    private static IReadOnlyList<FaultCase> Of(string name) =>
        [.. File.ReadLines(Path.Combine(LexiconFiles.Root, "tests", "data", "cases", name)).Where(l => l.Length > 0).Select(Read)];

    private static FaultCase Read(string line)
    {
        using var document = JsonDocument.Parse(line);
        var root = document.RootElement;
        var values = new List<FactValue>();
        var unread = new List<string>();
        foreach (var property in root.GetProperty("facts").EnumerateObject())
        {
            var fact = FactCatalogue.Find(property.Name)!;
            var understood = LexiconFiles.Understander.Understand(property.Value.GetString()!, new(fact, UnitSystem.Us));
            FactValue? value = fact.IsQuantity ? understood.Readings.LastOrDefault(r => r.Fact == fact) : understood.Observations.LastOrDefault(o => o.Fact == fact);
            if (value is null)
            {
                unread.Add($"{property.Name}: {property.Value.GetString()}");
            }
            else
            {
                values.Add(value);
            }
        }

        string[] accepted = root.TryGetProperty("accept", out var others) ? [.. others.EnumerateArray().Select(o => o.GetString()!)] : [];
        return new(root.GetProperty("id").GetString()!, root.GetProperty("truth").GetString()!, FactSet.Of(values), unread) { Accepted = accepted };
    }
}

internal sealed record FaultCase(string Id, string Truth, FactSet Facts, IReadOnlyList<string> Unread)
{
    public IReadOnlyList<string> Accepted { get; init; } = [];

    public bool Is(string code) => code == Truth || Accepted.Contains(code);
}
