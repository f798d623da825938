using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>One lexicon file while it is read: expands patterns into phrases of known words and keeps every mistake with its line.</summary>
internal sealed class LexiconFile(DialogYaml yaml, YamlMappingNode root, WordTable words)
{
    public YamlMappingNode Root => root;

    public void AllowOnly(params ReadOnlySpan<string> fields) => yaml.AllowOnly(root, "file", fields);

    public void AllowOnly(YamlMappingNode map, string key, params ReadOnlySpan<string> fields) => yaml.AllowOnly(map, key, fields);

    public void Report(DefectKind kind, YamlNode at, string key, string message) => yaml.Report(kind, at, key, message);

    /// <summary>The entries of a map field with the node each name stands at.</summary>
    public IEnumerable<(string Name, YamlNode At, YamlNode Entry)> Entries(string field)
    {
        switch (DialogYaml.Field(root, field))
        {
            case null:
                return [];
            case YamlMappingNode map:
                return map.Select(pair => (((YamlScalarNode)pair.Key).Value ?? "", pair.Key, pair.Value));
            case var other:
                Report(DefectKind.BrokenYaml, other, field, "a map of names was expected");
                return [];
        }
    }

    /// <summary>The maps of a list field.</summary>
    public IEnumerable<YamlMappingNode> Maps(string field)
    {
        if (DialogYaml.Field(root, field) is not { } node)
        {
            return [];
        }

        if (node is YamlSequenceNode list && list.All(n => n is YamlMappingNode))
        {
            return list.Cast<YamlMappingNode>();
        }

        Report(DefectKind.BrokenYaml, node, field, "a list of maps was expected");
        return [];
    }

    public string? Text(YamlMappingNode map, string key, string field) => yaml.Text(map, key, field);

    /// <summary>The texts of a list field as they stand.</summary>
    public IEnumerable<(string Text, YamlNode At)> Plain(string field) => Plain(root, field, field);

    public IEnumerable<(string Text, YamlNode At)> Plain(YamlMappingNode map, string key, string field) =>
        yaml.Texts(map, key, field).Select(n => (n.Value ?? "", (YamlNode)n));

    /// <summary>The single words of a list field of the file.</summary>
    public IEnumerable<(int Word, string Text, YamlNode At)> Words(string field) => Words(root, field, field);

    public IEnumerable<(int Word, string Text, YamlNode At)> Words(YamlMappingNode map, string key, string field)
    {
        foreach (var (phrase, text, at) in Phrases(map, key, field))
        {
            if (phrase.Length == 1)
            {
                yield return (phrase[0], text, at);
            }
            else
            {
                Report(DefectKind.BadValue, at, key, $"'{text}' must be one word");
            }
        }
    }

    public IEnumerable<(int[] Phrase, string Text, YamlNode At)> Phrases(string field) => Phrases(root, field, field);

    /// <summary>The phrases a field's patterns stand for.</summary>
    public IEnumerable<(int[] Phrase, string Text, YamlNode At)> Phrases(YamlMappingNode map, string key, string field) =>
        yaml.Texts(map, key, field).SelectMany(node => Phrases(node, key));

    /// <summary>The phrases that one pattern, or a list of them, stands for.</summary>
    public IEnumerable<(int[] Phrase, string Text, YamlNode At)> Phrases(YamlNode node, string key)
    {
        if (node is YamlSequenceNode list)
        {
            return list.SelectMany(item => Phrases(item, key));
        }

        if (node is not YamlScalarNode { Value: { } pattern })
        {
            Report(DefectKind.BrokenYaml, node, key, "a phrase or a list of phrases was expected");
            return [];
        }

        try
        {
            return [.. PhrasePattern.Expand(pattern).Select(text => (Numbered(text, node, key), text, node)).Where(p => p.Item1.Length > 0)];
        }
        catch (FormatException wrong)
        {
            Report(DefectKind.BadValue, node, key, wrong.Message);
            return [];
        }
    }

    /// <summary>Each word of a phrase with its number.</summary>
    public static IEnumerable<(string Text, int Word)> SpeltWords(string text, int[] phrase)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length == phrase.Length ? words.Zip(phrase) : [];
    }

    private int[] Numbered(string text, YamlNode at, string key)
    {
        var tokens = Tokenizer.Cut(text, words);
        if (tokens.Count > 0 && tokens.All(t => t.Word >= 0))
        {
            return [.. tokens.Select(t => t.Word)];
        }

        Report(DefectKind.BadValue, at, key, $"'{text}' is no phrase: words only, without digits or punctuation");
        return [];
    }
}
