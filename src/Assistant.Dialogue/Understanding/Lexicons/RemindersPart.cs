using System.Globalization;
using Assistant.Dialogue.Files;

namespace Assistant.Dialogue.Understanding.Lexicons;

/// <summary>Reads reminders.yaml: the words of what is to be done later, and when.</summary>
internal sealed class RemindersPart(LexiconFile file)
{
    private static readonly (string Field, RemindingKind Kind)[] Kinds =
        [("reminder", RemindingKind.Reminder), ("follow-up", RemindingKind.FollowUp), ("check-in", RemindingKind.CheckIn), ("check-off", RemindingKind.CheckOff)];

    public PhraseTable<RemindingKind> Asks { get; } = new();

    /// <summary>In minutes.</summary>
    public PhraseTable<int> Durations { get; } = new();

    /// <summary>In minutes.</summary>
    public PhraseTable<int> Units { get; } = new();

    public PhraseTable<int> Days { get; } = new();

    public PhraseTable<DayOfWeek> Weekdays { get; } = new();

    /// <summary>True for the afternoon.</summary>
    public PhraseTable<bool> Halves { get; } = new();

    /// <summary>What stands before a length of time, a time of day, or how often.</summary>
    public PhraseTable<bool> BeforeTime { get; } = new();

    public PhraseTable<bool> At { get; } = new();

    public PhraseTable<bool> About { get; } = new();

    public PhraseTable<bool> Contact { get; } = new();

    public PhraseTable<bool> ContactEnd { get; } = new();

    public void Read()
    {
        file.AllowOnly(
            "reminder", "follow-up", "check-in", "check-off", "every", "in", "at", "about", "contact", "contact-end", "durations", "units", "days", "weekdays", "morning", "afternoon");
        foreach (var (field, kind) in Kinds)
        {
            Add(Asks, field, kind);
        }

        Numbered(Durations, "durations");
        Numbered(Units, "units");
        Numbered(Days, "days");
        foreach (var ((text, at), day) in file.Plain("weekdays").Zip(Enum.GetValues<DayOfWeek>()))
        {
            foreach (var (phrase, _, _) in file.Phrases(at, text))
            {
                Weekdays.Add(phrase, day);
            }
        }

        Add(Halves, "morning", false);
        Add(Halves, "afternoon", true);
        Add(BeforeTime, "in", true);
        Add(BeforeTime, "every", true);
        Add(At, "at", true);
        Add(About, "about", true);
        Add(Contact, "contact", true);
        Add(ContactEnd, "contact-end", true);
    }

    private void Add<T>(PhraseTable<T> table, string field, T meaning)
    {
        foreach (var (phrase, _, _) in file.Phrases(field))
        {
            table.Add(phrase, meaning);
        }
    }

    private void Numbered(PhraseTable<int> table, string field)
    {
        foreach (var (name, at, entry) in file.Entries(field))
        {
            if (!int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                file.Report(DefectKind.BadValue, at, field, $"{field} is listed by a whole number, not \"{name}\"");
                continue;
            }

            foreach (var (phrase, _, _) in file.Phrases(entry, field))
            {
                table.Add(phrase, number);
            }
        }
    }
}
