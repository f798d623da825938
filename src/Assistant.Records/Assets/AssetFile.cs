using System.Collections.Immutable;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Assistant.Records.Assets;

/// <summary>
/// An asset as JSON: <c>id</c>, <c>site</c>, <c>unit</c> and <c>details</c> (name to text, as a person would write it). A <c>notice</c> and the
/// site's <c>units</c> may stand beside them; anything else is a mistake.
/// </summary>
public static partial class AssetFile
{
    private static readonly string[] Known = ["notice", "id", "site", "unit", "units", "details"];

    /// <exception cref="FormatException">One line naming the key that is wrong.</exception>
    public static Asset Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            var root = document.RootElement;
            if (root.EnumerateObject().Select(p => p.Name).FirstOrDefault(name => !Known.Contains(name)) is { } unknown)
            {
                throw new FormatException($"{unknown}: no such key; an asset has {string.Join(", ", Known)}.");
            }

            return new(Text(root, "id"), Text(root, "site"), Text(root, "unit"), Details(root));
        }
        catch (Exception broken) when (broken is JsonException or InvalidOperationException)
        {
            throw new FormatException($"This is not an asset as JSON: {broken.Message}", broken);
        }
    }

    private static string Text(JsonElement root, string key) =>
        root.TryGetProperty(key, out var value) && value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 } text
            ? text
            : throw new FormatException($"{key}: is missing or no text.");

    private static ImmutableSortedDictionary<string, string> Details(JsonElement root)
    {
        var details = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        if (root.TryGetProperty("details", out var listed))
        {
            foreach (var detail in listed.EnumerateObject())
            {
                if (!SnakeCase().IsMatch(detail.Name) || detail.Value.ValueKind != JsonValueKind.String)
                {
                    throw new FormatException($"details.{detail.Name}: a detail is a snake_case name and a text, such as \"full_charge\": \"12 lb\".");
                }

                details.Add(detail.Name, detail.Value.GetString()!);
            }
        }

        return details.ToImmutable();
    }

    [GeneratedRegex("^[a-z][a-z0-9_]*$")]
    private static partial Regex SnakeCase();
}
