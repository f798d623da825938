using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Files;

/// <summary>Reads a YAML file of the dialogue's data node by node, so that every mistake can name its line.</summary>
public sealed class DialogYaml(DialogFile file)
{
    private readonly List<DialogDefect> defects = [];

    public ImmutableArray<DialogDefect> Defects => [.. defects];

    public string Path => file.Path;

    /// <summary>The top-level map, empty where the text is no YAML map (then a defect says so).</summary>
    public YamlMappingNode Root()
    {
        try
        {
            var stream = new YamlStream();
            stream.Load(new StringReader(file.Text));
            if (stream.Documents.Count == 1 && stream.Documents[0].RootNode is YamlMappingNode map)
            {
                return map;
            }

            defects.Add(new(DefectKind.BrokenYaml, file.Path, 1, "file", "one map of keys was expected"));
        }
        catch (YamlException broken)
        {
            var kind = broken.Message.Contains("uplicate key", StringComparison.Ordinal) ? DefectKind.DuplicateId : DefectKind.BrokenYaml;
            defects.Add(new(kind, file.Path, (int)broken.Start.Line, "file", broken.Message));
        }

        return new();
    }

    public void Report(DefectKind kind, YamlNode at, string key, string message) => Report(kind, (int)at.Start.Line, key, message);

    public void Report(DefectKind kind, int line, string key, string message) => defects.Add(new(kind, file.Path, line, key, message));

    /// <summary>Reports every field of a map that is not among those allowed.</summary>
    public void AllowOnly(YamlMappingNode map, string key, params ReadOnlySpan<string> allowed)
    {
        foreach (var (field, _) in map)
        {
            if (!allowed.Contains(((YamlScalarNode)field).Value ?? ""))
            {
                Report(DefectKind.UnknownField, field, key, $"no field {field}; known here: {string.Join(", ", allowed.ToArray())}");
            }
        }
    }

    public static YamlNode? Field(YamlMappingNode map, string field) => map.Children.TryGetValue(new YamlScalarNode(field), out var found) ? found : null;

    /// <summary>Where a field stands, or its map where it is absent.</summary>
    public static YamlNode At(YamlMappingNode map, string field) => Field(map, field) ?? map;

    /// <summary>The text of a field, or null where it is absent; a list or map there is a defect.</summary>
    public string? Text(YamlMappingNode map, string key, string field)
    {
        var node = Field(map, field);
        if (node is null or YamlScalarNode)
        {
            return (node as YamlScalarNode)?.Value;
        }

        Report(DefectKind.BrokenYaml, node, key, $"{field} takes one word or text");
        return null;
    }

    /// <summary>The texts of a list field; one text counts as a list of one; absent is empty.</summary>
    public ImmutableArray<YamlScalarNode> Texts(YamlMappingNode map, string key, string field)
    {
        switch (Field(map, field))
        {
            case null:
                return [];
            case YamlScalarNode one:
                return [one];
            case YamlSequenceNode many when many.All(n => n is YamlScalarNode):
                return [.. many.Cast<YamlScalarNode>()];
            case var other:
                Report(DefectKind.BrokenYaml, other, key, $"{field} takes a list of words");
                return [];
        }
    }
}
