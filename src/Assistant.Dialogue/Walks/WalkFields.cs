using System.Collections.Immutable;
using System.Globalization;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Walks;

/// <summary>Reads the fields that stops and actions of a walk's file have in common.</summary>
internal sealed class WalkFields(DialogYaml yaml, PhraseBook phrases)
{
    public string Required(YamlMappingNode map, string key, string field)
    {
        var text = yaml.Text(map, key, field);
        if (string.IsNullOrWhiteSpace(text))
        {
            yaml.Report(DefectKind.MissingField, map, key, $"the field {field} is missing");
        }

        return text ?? "";
    }

    public string Phrase(YamlNode at, string name, string key)
    {
        if (key.Length > 0 && !phrases.Has(key))
        {
            yaml.Report(DefectKind.UnknownPhrase, at, name, $"no phrase {key}");
        }

        return key;
    }

    /// <summary>A word as it is said, in full and in brief.</summary>
    public ImmutableArray<string> WordsOf(string word) => [phrases.Word(word), phrases.Word(word, brief: true)];

    public ImmutableArray<CautionCode> Cautions(YamlMappingNode map, string name, string field)
    {
        var found = ImmutableArray.CreateBuilder<CautionCode>();
        foreach (var node in yaml.Texts(map, name, field))
        {
            if (Codes.FindCaution(node.Value ?? "") is { } code)
            {
                found.Add(code);
            }
            else
            {
                yaml.Report(DefectKind.UnknownCaution, node, name, $"no caution {node.Value}");
            }
        }

        return found.ToImmutable();
    }

    public TimeSpan? Minutes(YamlMappingNode map, string name)
    {
        var text = yaml.Text(map, name, "remind");
        if (text is null)
        {
            return null;
        }

        if (text.EndsWith(" min", StringComparison.Ordinal) && int.TryParse(text[..^4], NumberStyles.None, CultureInfo.InvariantCulture, out var minutes))
        {
            return TimeSpan.FromMinutes(minutes);
        }

        yaml.Report(DefectKind.BadValue, DialogYaml.At(map, "remind"), name, $"remind is written \"20 min\", not \"{text}\"");
        return null;
    }

    /// <summary>True for "yes"; false where the field is absent.</summary>
    public bool Yes(YamlMappingNode map, string name, string field)
    {
        var text = yaml.Text(map, name, field);
        if (text is not (null or "yes" or "no"))
        {
            yaml.Report(DefectKind.BadValue, DialogYaml.At(map, field), name, $"{field} is yes or no, not \"{text}\"");
        }

        return text == "yes";
    }
}
