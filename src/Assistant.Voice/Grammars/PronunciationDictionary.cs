using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Walks;
using YamlDotNet.RepresentationModel;

namespace Assistant.Voice.Grammars;

/// <summary>
/// How words sound: the trade's own first (dialogs/voice/pronunciations.yaml), then the recogniser's general dictionary. A word of
/// neither, or marked unspoken, can not be listened for.
/// </summary>
public sealed partial class PronunciationDictionary
{
    private readonly FrozenDictionary<string, ImmutableArray<string>> sounds;

    private PronunciationDictionary(Dictionary<string, ImmutableArray<string>> sounds) => this.sounds = sounds.ToFrozenDictionary(StringComparer.Ordinal);

    /// <param name="general">The general dictionary's lines: a word, a second way as "word(2)", then its phones.</param>
    /// <param name="needed">The words that will ever be asked for, so that the other hundred thousand are not carried along; null keeps all.</param>
    /// <exception cref="DialogDataException">With every mistake found in the trade's file.</exception>
    public static PronunciationDictionary Load(DialogFile trade, IEnumerable<string> general, IReadOnlySet<string>? needed = null)
    {
        ArgumentNullException.ThrowIfNull(general);
        var sounds = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        foreach (var line in general)
        {
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            if (space > 0)
            {
                var word = line[..space];
                var bracket = word.IndexOf('(', StringComparison.Ordinal);
                word = (bracket > 0 ? word[..bracket] : word).Replace("'", "", StringComparison.Ordinal);
                if (needed is not null && !needed.Contains(word))
                {
                    continue;
                }

                sounds[word] = sounds.GetValueOrDefault(word, []).Add(line[(space + 1)..].Trim());
            }
        }

        var yaml = new DialogYaml(trade);
        var root = yaml.Root();
        yaml.AllowOnly(root, "file", "words", "unspoken");
        if (DialogYaml.Field(root, "words") is YamlMappingNode words)
        {
            foreach (var key in words.Children.Keys.OfType<YamlScalarNode>())
            {
                sounds[key.Value ?? ""] = [.. yaml.Texts(words, key.Value ?? "", key.Value ?? "").Select(n => n.Value ?? "")];
            }
        }

        foreach (var word in yaml.Texts(root, "unspoken", "unspoken"))
        {
            sounds.Remove(word.Value ?? "");
        }

        return yaml.Defects.IsEmpty ? new(sounds) : throw new DialogDataException(yaml.Defects);
    }

    /// <summary>Every word that stands anywhere in these files or is offered by a walk or the dialogue, and every letter by its name: what the grammars made from them can hold.</summary>
    public static IReadOnlySet<string> WordsOf(IEnumerable<DialogFile> files, WalkLibrary walks) =>
        files.SelectMany(f => Letters().Matches(f.Text)).Select(m => m.Value.Replace("'", "", StringComparison.Ordinal).ToLowerInvariant())
            
            .Concat(OfferedChoices.Phrases(walks).SelectMany(p => p.Split(' ')))
            .Concat(Enumerable.Range('a', 26).Select(c => ((char)c).ToString())).ToHashSet(StringComparer.Ordinal);

    [GeneratedRegex("[A-Za-z']+")]
    private static partial Regex Letters();

    public bool Knows(string word) => sounds.ContainsKey(word);

    /// <summary>Whether every word of a phrase can be listened for.</summary>
    public bool CanBeHeard(string phrase) => phrase.Length > 0 && phrase.Split(' ').All(Knows);

    /// <summary>Every way a phrase sounds, as its phones one after the other.</summary>
    public IEnumerable<string[]> Ways(string phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.Split(' ').Aggregate<string, IEnumerable<string>>([""], (begun, word) => begun.SelectMany(_ => sounds[word], (b, w) => $"{b} {w}".Trim())).Select(way => way.Split(' '));
    }

    /// <summary>A dictionary file for the recogniser with just these words, so that it loads fast and stays small.</summary>
    public string FileFor(IEnumerable<string> words)
    {
        var file = new StringBuilder();
        foreach (var word in words.Distinct().Order(StringComparer.Ordinal))
        {
            for (var i = 0; i < sounds[word].Length; i++)
            {
                file.Append(word).Append(i == 0 ? "" : $"({i + 1})").Append(' ').Append(sounds[word][i]).Append('\n');
            }
        }

        return file.ToString();
    }
}
