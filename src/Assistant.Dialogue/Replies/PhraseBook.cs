using System.Collections.Frozen;
using Assistant.Dialogue.Files;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Replies;

/// <summary>
/// Every sentence the assistant says, by key, each in a full and a brief form, and in one for the ear where the brief one does not serve.
/// The files hold one map of <c>key: { full: "...", brief: "...", spoken: "..." }</c>; <c>{name}</c> stands for a number or word, <c>{name:percent}</c> for a share said in percent.
/// A word is said by its own phrase <c>word.…</c> or <c>fact.…</c> where there is one ("distributor-end", "suction_pressure").
/// </summary>
public sealed class PhraseBook
{
    private readonly FrozenDictionary<string, PhraseForms> phrases;

    // What a word inside a sentence is said as: "word.x" and "fact.x" by x, "fault.x" by its whole key.
    private readonly FrozenDictionary<string, PhraseForms> words;

    private PhraseBook(Dictionary<string, PhraseForms> phrases)
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
        var found = new Dictionary<string, PhraseForms>(StringComparer.Ordinal);
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
        var forms = Find(key);
        return new(forms.Full.Fill(key, units, parts, this, PhraseForm.Full), forms.Brief.Fill(key, units, parts, this, PhraseForm.Brief))
        {
            Spoken = forms.Spoken?.Fill(key, units, parts, this, PhraseForm.Spoken),
        };
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

    /// <summary>The same as a voice says it.</summary>
    public string WordAloud(string word) => words.TryGetValue(word, out var found) ? (found.Spoken ?? found.Brief).Plain : word;

    private PhraseForms Find(string key) =>
        phrases.TryGetValue(key, out var found) ? found : throw new KeyNotFoundException($"No phrase '{key}' in the phrase book.");

    private static void Read(DialogYaml yaml, string key, YamlNode entry, Dictionary<string, PhraseForms> found)
    {
        if (entry is not YamlMappingNode map)
        {
            yaml.Report(DefectKind.BrokenYaml, entry, key, "a phrase is written { full: \"...\", brief: \"...\" }");
            return;
        }

        yaml.AllowOnly(map, key, "full", "brief", "spoken");
        var (full, brief, spoken) = (yaml.Text(map, key, "full"), yaml.Text(map, key, "brief"), yaml.Text(map, key, "spoken"));
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

        var aloud = Template(yaml, key, map, spoken);
        foreach (var name in shorter.Names.Except(longer.Names))
        {
            yaml.Report(DefectKind.UnknownPlaceholder, entry, key, $"the brief form wants {{{name}}}, which the full form does not name");
        }

        foreach (var name in aloud?.Names.Except(longer.Names) ?? [])
        {
            yaml.Report(DefectKind.UnknownPlaceholder, entry, key, $"the spoken form wants {{{name}}}, which the full form does not name");
        }

        if (!found.TryAdd(key, new(longer, shorter, aloud)))
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
