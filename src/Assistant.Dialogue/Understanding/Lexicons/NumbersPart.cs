using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Numbers;
using YamlDotNet.RepresentationModel;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads numbers.yaml: the words numbers are made of, valued by the number recogniser.</summary>
internal sealed class NumbersPart(LexiconFile file)
{
    private readonly NumberVocabulary vocabulary = new();
    private readonly Dictionary<string, double> values = new(StringComparer.Ordinal);

    public NumberVocabulary Vocabulary => vocabulary;

    public HashSet<int> Minus { get; } = [];

    public HashSet<int> Plus { get; } = [];

    public PhraseTable<bool> BelowZero { get; } = new();

    public void Read()
    {
        file.AllowOnly("cardinals", "fractions", "rare", "spelt", "homophones", "cut-off", "nought-between-digits", "point", "and", "of", "articles", "minus", "plus", "below-zero");
        foreach (var (word, text, at) in file.Words("cardinals"))
        {
            Valued(word, text, at, text, null);
        }

        foreach (var (word, text, at) in file.Words("fractions"))
        {
            Valued(word, text, at, text.EndsWith('s') ? $"one {text[..^1]}" : $"one {text}", NumberPart.Fraction);
        }

        foreach (var (name, _, entry) in file.Entries("spelt"))
        {
            Spelt(name, entry, (part, _) => new(part));
        }

        HashSet<int> cutOff = [.. file.Words("cut-off").Select(w => w.Word)];
        foreach (var (name, _, entry) in file.Entries("homophones"))
        {
            Spelt(name, entry, (_, word) => new(NumberPart.Homophone, LeavesOpen: cutOff.Contains(word)));
        }

        foreach (var (field, part) in new[] { ("rare", NumberPart.Rare), ("nought-between-digits", NumberPart.Oh), ("point", NumberPart.Point), ("and", NumberPart.And), ("of", NumberPart.Of), ("articles", NumberPart.Article) })
        {
            foreach (var (word, text, at) in file.Words(field))
            {
                Add(word, text, at, new(part));
            }
        }

        Minus.UnionWith(file.Words("minus").Select(w => w.Word));
        Plus.UnionWith(file.Words("plus").Select(w => w.Word));
        foreach (var (phrase, _, _) in file.Phrases("below-zero"))
        {
            BelowZero.Add(phrase, true);
        }
    }

    private void Valued(int word, string text, YamlNode at, string asked, NumberPart? part)
    {
        if ((CardinalRecogniser.ValueOf(asked) ?? CardinalRecogniser.ValueOf($"one {asked}")) is not { } value)
        {
            file.Report(DefectKind.BadValue, at, text, $"'{text}' is no English number");
            return;
        }

        values[text] = value;
        Add(word, text, at, new(part ?? PartOf(value), value));
    }

    private void Spelt(string name, YamlNode entry, Func<NumberPart, int, NumberWord> part)
    {
        if (!values.TryGetValue(name, out var value))
        {
            file.Report(DefectKind.BadValue, entry, name, $"'{name}' is not among the cardinals");
            return;
        }

        foreach (var (phrase, text, at) in file.Phrases(entry, name))
        {
            Add(phrase[0], text, at, part(PartOf(value), phrase[0]) with { Value = value });
        }
    }

    private void Add(int word, string text, YamlNode at, NumberWord part)
    {
        if (!vocabulary.Add(word, part))
        {
            file.Report(DefectKind.DuplicateId, at, text, $"'{text}' already is a part of numbers");
        }
    }

    private static NumberPart PartOf(double value) => value switch
    {
        0 => NumberPart.Zero,
        < 10 => NumberPart.Digit,
        < 20 => NumberPart.Teen,
        < 100 => NumberPart.Tens,
        100 => NumberPart.Hundred,
        _ => NumberPart.Thousand,
    };
}
