using System.Collections.Frozen;
using Assistant.Dialogue.Files;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Replies;

/// <summary>
/// Every sentence the assistant says, by key, each in a full and a brief form. The files hold one map of
/// <c>key: { full: "...", brief: "..." }</c>; <c>{name}</c> stands for a number or word, <c>{name:percent}</c> for a share said in percent.
/// A word is said by its own phrase <c>word.…</c> or <c>fact.…</c> where there is one ("distributor-end", "suction_pressure").
/// </summary>
public sealed class PhraseBook
{
    private readonly FrozenDictionary<string, (PhraseTemplate Full, PhraseTemplate Brief)> phrases;

    // What a word inside a sentence is said as: "word.x" and "fact.x" by x, "fault.x" by its whole key.
    private readonly FrozenDictionary<string, (PhraseTemplate Full, PhraseTemplate Brief)> words;

    private PhraseBook(Dictionary<string, (PhraseTemplate Full, PhraseTemplate Brief)> phrases)
    {
        this.phrases = phrases.ToFrozenDictionary(StringComparer.Ordinal);
        words = phrases.Where(p => p.Value.Full.Names.IsEmpty && (p.Key.StartsWith("word.", StringComparison.Ordinal) || p.Key.StartsWith("fact.", StringComparison.Ordinal)))
            .Select(p => (Word: p.Key[5..], p.Value))
            .Concat(phrases.Where(p => p.Key.StartsWith("fault.", StringComparison.Ordinal)).Select(p => (Word: p.Key, p.Value)))
            .DistinctBy(p => p.Word)
            .ToFrozenDictionary(p => p.Word, p => p.Value, StringComparer.Ordinal);
    }

    public IEnumerable<string> Keys => phrases.Keys;

    /// <exception cref="DialogDataException">With every mistake found, each with file, line and key.</exception>
    public static PhraseBook Load(IEnumerable<DialogFile> files)
    {
        var found = new Dictionary<string, (PhraseTemplate, PhraseTemplate)>(StringComparer.Ordinal);
        var defects = new List<DialogDefect>();
        foreach (var file in files)
        {
            var yaml = new DialogYaml(file);
            foreach (var (key, entry) in yaml.Root())
            {
                Read(yaml, ((YamlScalarNode)key).Value ?? "", entry, found);
            }

            defects.AddRange(yaml.Defects);
        }

        return defects.Count == 0 ? new(found) : throw new DialogDataException([.. defects]);
    }

    public bool Has(string key) => phrases.ContainsKey(key);

    /// <summary>The names a phrase wants filled.</summary>
    /// <exception cref="KeyNotFoundException">No phrase has that key.</exception>
    public IEnumerable<string> PlaceholdersOf(string key) => Find(key).Full.Names;

    /// <summary>A sentence, its numbers in the hearer's units.</summary>
    /// <exception cref="KeyNotFoundException">No phrase has that key, or a placeholder has no part of its name.</exception>
    public Phrase Say(string key, UnitSystem units, params ReadOnlySpan<ReasonPart> parts)
    {
        var (full, brief) = Find(key);
        return new(full.Fill(key, units, parts, this, brief: false), brief.Fill(key, units, parts, this, brief: true));
    }

    /// <inheritdoc cref="Say(string, UnitSystem, ReadOnlySpan{ReasonPart})"/>
    public Phrase Say(Reason reason, UnitSystem units) => Say(reason.Key, units, reason.Parts.AsSpan());

    /// <summary>A fact's name or an observed word as it is said; itself where no phrase says it otherwise.</summary>
    public string Word(string word, bool brief = false)
    {
        if (!words.TryGetValue(word, out var found))
        {
            return word;
        }

        return (brief ? found.Brief : found.Full).Plain;
    }

    private (PhraseTemplate Full, PhraseTemplate Brief) Find(string key) =>
        phrases.TryGetValue(key, out var found) ? found : throw new KeyNotFoundException($"No phrase '{key}' in the phrase book.");

    private static void Read(DialogYaml yaml, string key, YamlNode entry, Dictionary<string, (PhraseTemplate, PhraseTemplate)> found)
    {
        if (entry is not YamlMappingNode map)
        {
            yaml.Report(DefectKind.BrokenYaml, entry, key, "a phrase is written { full: \"...\", brief: \"...\" }");
            return;
        }

        yaml.AllowOnly(map, key, "full", "brief");
        var (full, brief) = (yaml.Text(map, key, "full"), yaml.Text(map, key, "brief"));
        if (string.IsNullOrWhiteSpace(full))
        {
            yaml.Report(DefectKind.MissingFull, entry, key, "the full form is missing");
        }

        if (string.IsNullOrWhiteSpace(brief))
        {
            yaml.Report(DefectKind.MissingBrief, entry, key, "the brief form is missing");
        }

        if (Template(yaml, key, map, full) is not { } longer || Template(yaml, key, map, brief) is not { } shorter)
        {
            return;
        }

        foreach (var name in shorter.Names.Except(longer.Names))
        {
            yaml.Report(DefectKind.UnknownPlaceholder, entry, key, $"the brief form wants {{{name}}}, which the full form does not name");
        }

        if (!found.TryAdd(key, (longer, shorter)))
        {
            yaml.Report(DefectKind.DuplicateId, entry, key, "this phrase is defined twice");
        }
    }

    private static PhraseTemplate? Template(DialogYaml yaml, string key, YamlNode at, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (PhraseTemplate.TryParse(text, out var template, out var wrong))
        {
            return template;
        }

        yaml.Report(DefectKind.BadPlaceholder, at, key, wrong);
        return null;
    }
}
