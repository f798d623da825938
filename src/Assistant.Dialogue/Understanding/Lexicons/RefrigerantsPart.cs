using Assistant.Dialogue.Files;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads refrigerants.yaml: designations by number and letter, and what else they are called.</summary>
internal sealed class RefrigerantsPart(LexiconFile file, WordTable words)
{
    /// <summary>By number: each letter, as a word ("a", "c", "yf"; -1 for none), with its designation.</summary>
    public Dictionary<int, List<(int Letter, string Designation)>> ByNumber { get; } = [];

    public PhraseTable<string> Called { get; } = new();

    public HashSet<int> Marks { get; } = [];

    public void Read()
    {
        file.AllowOnly("designations", "called", "marks");
        foreach (var (designation, at) in file.Plain("designations"))
        {
            var digits = designation.Skip(1).TakeWhile(char.IsAsciiDigit).Count();
            if (!designation.StartsWith('R') || digits == 0)
            {
                file.Report(DefectKind.BadValue, at, designation, $"'{designation}' is no designation: R, a number and perhaps letters");
                continue;
            }

            var number = int.Parse(designation.AsSpan(1, digits), System.Globalization.CultureInfo.InvariantCulture);
            var letters = designation[(digits + 1)..].Split('(')[0].ToLowerInvariant();
            var list = ByNumber.TryGetValue(number, out var known) ? known : ByNumber[number] = [];
            list.Add((letters.Length == 0 ? -1 : words.NumberOf(letters), designation));
        }

        foreach (var (designation, _, entry) in file.Entries("called"))
        {
            foreach (var (phrase, _, _) in file.Phrases(entry, designation))
            {
                Called.Add(phrase, designation);
            }
        }

        Marks.UnionWith(file.Words("marks").Select(w => w.Word));
    }
}
