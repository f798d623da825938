using System.Collections.Frozen;
using System.Text;
using Assistant.Dialogue.Files;

namespace Assistant.Dialogue.Turns;

/// <summary>The few words the dialogue itself listens for: a yes or no to its own question, "ok" at a step, "later", an emergency.</summary>
public sealed class ShortWords
{
    private static readonly string[] Lists = ["yes", "no", "confirm", "arrived", "mended", "later", "resume", "well", "safe", "mine", "first", "second", "closing", "emergency"];

    private readonly FrozenSet<string> yes;
    private readonly FrozenSet<string> no;
    private readonly FrozenSet<string> confirm;
    private readonly FrozenSet<string> arrived;
    private readonly FrozenSet<string> mended;
    private readonly FrozenSet<string> later;
    private readonly FrozenSet<string> resume;
    private readonly FrozenSet<string> well;
    private readonly FrozenSet<string> safe;
    private readonly FrozenSet<string> mine;
    private readonly FrozenSet<string> first;
    private readonly FrozenSet<string> second;
    private readonly string[] closing;
    private readonly string[] emergency;

    private ShortWords(Dictionary<string, string[]> lists)
    {
        (yes, no, confirm) = (Whole(lists["yes"]), Whole(lists["no"]), Whole(lists["confirm"]));
        arrived = Whole(lists["arrived"]);
        (mended, later, resume, well) = (Whole(lists["mended"]), Whole(lists["later"]), Whole(lists["resume"]), Whole(lists["well"]));
        safe = Whole(lists["safe"]);
        (mine, first, second) = (Whole(lists["mine"]), Whole(lists["first"]), Whole(lists["second"]));
        closing = [.. lists["closing"].Select(e => $" {e} ")];
        emergency = [.. lists["emergency"].Select(e => $" {e} ")];
    }

    /// <exception cref="DialogDataException">A list is missing, unknown or empty.</exception>
    public static ShortWords Load(DialogFile file)
    {
        var yaml = new DialogYaml(file);
        var root = yaml.Root();
        yaml.AllowOnly(root, "words", Lists);
        var found = Lists.ToDictionary(list => list, list => yaml.Texts(root, list, list).Select(n => n.Value ?? "").ToArray());
        foreach (var (list, words) in found)
        {
            if (words.Length == 0)
            {
                yaml.Report(DefectKind.MissingField, root, list, "the list is missing or empty");
            }

            foreach (var word in words.Where(w => Plain(w) != w))
            {
                yaml.Report(DefectKind.BadValue, root, list, $"\"{word}\" is written in small letters without punctuation: \"{Plain(word)}\"");
            }
        }

        return yaml.Defects.IsEmpty ? new(found) : throw new DialogDataException(yaml.Defects);
    }

    /// <summary>A message in small letters, without punctuation, single spaces.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var letter in text)
        {
            if (char.IsLetterOrDigit(letter))
            {
                plain.Append(char.ToLowerInvariant(letter));
            }
            else if (letter is not ('\'' or '’') && plain.Length > 0 && plain[^1] != ' ')
            {
                plain.Append(' ');
            }
        }

        return plain.ToString().TrimEnd();
    }

    public bool IsYes(string plain) => yes.Contains(plain);

    public bool IsNo(string plain) => no.Contains(plain);

    /// <summary>True for "ok" and its like, and for two of them in a row ("yes, all safe").</summary>
    public bool IsConfirm(string plain) => confirm.Contains(plain) || InTwo(plain, confirm, confirm);

    /// <summary>True for a word that says that the speaker is at the unit.</summary>
    public bool IsArrived(string plain) => arrived.Contains(plain) || InTwo(plain, confirm, arrived);

    /// <summary>True for a word that says a repair is done: an "ok" to what is to be done is none.</summary>
    public bool IsMended(string plain) => mended.Contains(plain) || InTwo(plain, confirm, mended) || InTwo(plain, mended, mended);

    public bool IsLater(string plain) => later.Contains(plain);

    /// <summary>True for a word that leads back to the walk that was left.</summary>
    public bool IsResume(string plain) => resume.Contains(plain);

    /// <summary>True where somebody says that where they work is safe, asked or not.</summary>
    public bool IsSafe(string plain) => safe.Contains(plain);

    /// <summary>True where a message begins by saying so and goes on.</summary>
    public bool BeginsSafe(string plain)
    {
        for (var space = plain.IndexOf(' ', StringComparison.Ordinal); space > 0; space = plain.IndexOf(' ', space + 1))
        {
            if (safe.Contains(plain[..space]))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True for an answer to "are you all right?".</summary>
    public bool IsWell(string plain) => yes.Contains(plain) || well.Contains(plain);

    /// <summary>True where the speaker's own is meant, of two readings.</summary>
    public bool IsMine(string plain) => mine.Contains(plain);

    public bool IsFirst(string plain) => first.Contains(plain);

    public bool IsSecond(string plain) => second.Contains(plain);

    /// <summary>True where it is said that the visit itself ends, and not only a step of it.</summary>
    public bool IsClosing(string plain) => Stands(closing, plain);

    public bool IsEmergency(string plain) => Stands(emergency, plain);

    private static bool Stands(string[] anywhere, string plain)
    {
        var padded = $" {plain} ";
        return Array.Exists(anywhere, e => padded.Contains(e, StringComparison.Ordinal));
    }

    private static bool InTwo(string plain, FrozenSet<string> start, FrozenSet<string> end)
    {
        for (var space = plain.IndexOf(' ', StringComparison.Ordinal); space > 0; space = plain.IndexOf(' ', space + 1))
        {
            if (start.Contains(plain[..space]) && end.Contains(plain[(space + 1)..]))
            {
                return true;
            }
        }

        return false;
    }

    private static FrozenSet<string> Whole(string[] words) => words.ToFrozenSet(StringComparer.Ordinal);
}
