using System.Text.Json;

namespace Assistant.App.Commands;

/// <summary>One line of the assess command: a set of facts as a person would write them.</summary>
internal sealed record AssessLine(string Id, IReadOnlyList<(string Fact, string Text)> Facts)
{
    /// <summary>The line, or null with the key that is missing or broken.</summary>
    public static AssessLine? Parse(string text, out string key, out string wrong)
    {
        (key, wrong) = ("json", "");
        try
        {
            using var document = JsonDocument.Parse(text);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object)
            {
                wrong = "a line is one JSON object";
                return null;
            }

            key = "id";
            if (!root.TryGetProperty("id", out var id) || id.ValueKind is not (JsonValueKind.String or JsonValueKind.Number))
            {
                wrong = "the field is missing; it is a text";
                return null;
            }

            key = "facts";
            if (!root.TryGetProperty("facts", out var facts) || facts.ValueKind != JsonValueKind.Object)
            {
                wrong = "the field is missing; it is an object of fact and text";
                return null;
            }

            return new(Written(id), [.. facts.EnumerateObject().Select(p => (p.Name, Written(p.Value)))]);
        }
        catch (JsonException broken)
        {
            wrong = "broken JSON at character " + ((broken.BytePositionInLine ?? 0) + 1);
            return null;
        }
    }

    private static string Written(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString()!,
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        JsonValueKind.Null => "",
        _ => value.GetRawText(),
    };
}
