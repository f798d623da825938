using System.Collections.Immutable;
using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Numbers;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>
/// The trade's words for facts, values, units, numbers, commands and questions, as dialogs/lexicon holds them. Immutable once
/// loaded; every mistake in the files is reported at load with file, line and key.
/// </summary>
public sealed class Lexicon
{
    private Lexicon(WordTable words, NumbersPart numbers, UnitsPart units, RefrigerantsPart refrigerants)
    {
        Words = words;
        Signs = new(words);
        Numbers = numbers;
        Units = units;
        Refrigerants = refrigerants;
        NumberReader = new(numbers.Vocabulary, Signs);
    }

    internal WordTable Words { get; }

    internal Signs Signs { get; }

    internal NumbersPart Numbers { get; }

    internal UnitsPart Units { get; }

    internal RefrigerantsPart Refrigerants { get; }

    internal NumberReader NumberReader { get; }

    /// <summary>Reads the files of the lexicon; each is known by its name (numbers.yaml, units.yaml and so on) and must be there.</summary>
    /// <exception cref="DialogDataException">With every mistake found, each with file, line and key.</exception>
    public static Lexicon Load(IEnumerable<DialogFile> files)
    {
        var words = new WordTable();
        var byName = files.ToDictionary(f => System.IO.Path.GetFileName(f.Path), StringComparer.Ordinal);
        var defects = new List<DialogDefect>();

        T Part<T>(string name, Func<LexiconFile, T> make, Action<T> read)
        {
            var known = byName.TryGetValue(name, out var file);
            var yaml = new DialogYaml(file ?? new(name, "{}"));
            if (!known)
            {
                defects.Add(new(DefectKind.MissingField, name, 1, "file", $"the lexicon has no {name}"));
            }

            var part = make(new(yaml, yaml.Root(), words));
            read(part);
            defects.AddRange(yaml.Defects);
            return part;
        }

        var numbers = Part("numbers.yaml", f => new NumbersPart(f), p => p.Read());
        var units = Part("units.yaml", f => new UnitsPart(f), p => p.Read());
        var refrigerants = Part("refrigerants.yaml", f => new RefrigerantsPart(f, words), p => p.Read());
        var lexicon = new Lexicon(words, numbers, units, refrigerants);
        words.Closed = true;
        return defects.Count == 0 ? lexicon : throw new DialogDataException([.. defects.ToImmutableArray()]);
    }
}
