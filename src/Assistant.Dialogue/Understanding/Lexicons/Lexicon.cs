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
    private Lexicon(WordTable words, Func<string, LexiconFile> file, IEnumerable<LexiconFile> walks)
    {
        Words = words;
        Signs = new(words);
        Numbers = new(file("numbers.yaml"));
        Units = new(file("units.yaml"));
        Refrigerants = new(file("refrigerants.yaml"), words);
        Facts = new(file("facts.yaml"));
        Values = new(file("values.yaml"));
        Cues = new(file("cues.yaml"));
        Commands = new(file("commands.yaml"), words);
        Questions = new(file("questions.yaml"));
        Filling = new(file("words.yaml"), words);
        Reminders = new(file("reminders.yaml"));
        Cylinders = new(file("cylinders.yaml"));
        Leaks = new(file("leaks.yaml"));
        Requests = new(file("requests.yaml"), words);
        Numbers.Read();
        Units.Read();
        Refrigerants.Read();
        Facts.Read();
        Values.Read();
        Cues.Read();
        Commands.Read();
        foreach (var walk in walks)
        {
            Commands.ReadWalk(walk);
        }

        Questions.Read();
        Filling.Read();
        Reminders.Read();
        Cylinders.Read();
        Leaks.Read();
        Requests.Read();
        foreach (var (text, word) in Facts.Spelt.Concat(Units.Spelt))
        {
            Spelling.Add(text, word);
        }

        NumberReader = new(Numbers.Vocabulary, Signs);
    }

    internal WordTable Words { get; }

    internal Signs Signs { get; }

    internal NumbersPart Numbers { get; }

    internal UnitsPart Units { get; }

    internal RefrigerantsPart Refrigerants { get; }

    internal FactsPart Facts { get; }

    internal ValuesPart Values { get; }

    internal CuesPart Cues { get; }

    internal CommandsPart Commands { get; }

    internal QuestionsPart Questions { get; }

    internal WordsPart Filling { get; }

    internal RemindersPart Reminders { get; }

    internal CylindersPart Cylinders { get; }

    internal LeaksPart Leaks { get; }

    internal RequestsPart Requests { get; }

    internal NumberReader NumberReader { get; }

    internal Spelling Spelling { get; } = new();

    /// <summary>Reads the files of the lexicon; each is known by its name (numbers.yaml, units.yaml and so on) and must be there.</summary>
    /// <exception cref="DialogDataException">With every mistake found, each with file, line and key.</exception>
    /// <param name="walks">The walks' own files, for the words that begin each.</param>
    public static Lexicon Load(IEnumerable<DialogFile> files, params IEnumerable<DialogFile> walks)
    {
        var words = new WordTable();
        var byName = files.ToDictionary(f => Path.GetFileName(f.Path), StringComparer.Ordinal);
        var defects = new List<DialogDefect>();
        var read = new List<DialogYaml>();

        LexiconFile Named(string name)
        {
            if (!byName.TryGetValue(name, out var file))
            {
                defects.Add(new(DefectKind.MissingField, name, 1, "file", $"the lexicon has no {name}"));
            }

            return Open(file ?? new(name, "{}"));
        }

        LexiconFile Open(DialogFile file)
        {
            var yaml = new DialogYaml(file);
            read.Add(yaml);
            return new(yaml, yaml.Root(), words);
        }

        var lexicon = new Lexicon(words, Named, [.. walks.Select(Open)]);
        words.Closed = true;
        defects.AddRange(read.SelectMany(y => y.Defects));
        return defects.Count == 0 ? lexicon : throw new DialogDataException([.. defects]);
    }
}
