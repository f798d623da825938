using System.Text.Json;
using System.Text.Json.Serialization;

namespace Assistant.Trade.Regulations;

/// <summary>Reads the rule files strictly: an unknown, missing or repeated key and a null where none may be are errors with file and key.</summary>
public static class RegulationJson
{
    private static readonly JsonSerializerOptions Strict = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <exception cref="RegulationDataException">The text is not such a file.</exception>
    public static Regulation ReadRule(string file, string json)
    {
        var rule = Read<Regulation>(file, json);
        if (rule.Rule != Path.GetFileNameWithoutExtension(file))
        {
            throw new RegulationDataException(file, "$.rule", $"\"{rule.Rule}\" is not the name of its file");
        }

        if (rule.ValidTo < rule.ValidFrom)
        {
            throw new RegulationDataException(file, "$.validTo", "before validFrom");
        }

        return rule;
    }

    /// <exception cref="RegulationDataException">The text is not such a file.</exception>
    public static GwpTable ReadGwp(string file, string json)
    {
        var table = Read<GwpFile>(file, json);
        foreach (var component in table.Components.Where(c => c.Gwp < 0 || c.EuGwp < 0))
        {
            throw new RegulationDataException(file, $"$.components.{component.Name}", "a global warming potential is not negative");
        }

        return new GwpTable(table);
    }

    private static T Read<T>(string file, string json)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(json, Strict) ?? throw new RegulationDataException(file, "$", "the file holds null");
        }
        catch (JsonException wrong)
        {
            throw new RegulationDataException(file, wrong.Path ?? "$", wrong.Message, wrong);
        }
        catch (NotSupportedException wrong)
        {
            throw new RegulationDataException(file, "$.shape", wrong.Message, wrong);
        }
    }
}
