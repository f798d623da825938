using System.Globalization;
using Assistant.Dialogue.Understanding.Lexicons;
using Assistant.Dialogue.Understanding.Text;

namespace Assistant.Dialogue.Understanding.Analysis;

/// <summary>Recognises a message that asks to be reminded, to be come back for, or to be looked after: its first words say so.</summary>
internal sealed class ReminderReader(Lexicon lexicon)
{
    /// <summary>A wish is said in fewer words.</summary>
    private const int LongestWish = 40;

    private RemindersPart Words => lexicon.Reminders;

    /// <summary>The wish, or null where the message is none. "Tell me" and the like without a time are none.</summary>
    public Reminding? Read(Message message)
    {
        var tokens = message.Tokens;
        var at = lexicon.Commands.AfterPoliteness(tokens);
        var length = Words.Asks.LongestAt(tokens, at, out var asks);
        if (length == 0)
        {
            return null;
        }

        var (kind, start) = (asks[0], at + length);
        var time = FindTime(message, start);
        var contact = kind == RemindingKind.CheckIn ? Contact(message, start) : null;
        if (kind is RemindingKind.Reminder or RemindingKind.FollowUp && time is null)
        {
            return null;
        }

        var about = time is { } found && kind is RemindingKind.Reminder or RemindingKind.FollowUp ? About(message, start, time!.Value) : "";
        var (after, days, weekday, clock, open) = time is { } said ? (said.After, said.Days, said.Weekday, said.Clock, said.IsOpen) : default;
        return new(kind, after, days, weekday, clock, open, about, contact);
    }

    private Said? FindTime(Message message, int start)
    {
        for (var at = start; at < Math.Min(message.Tokens.Count, start + LongestWish); at++)
        {
            if ((Length(message, at) ?? Day(message, at) ?? Clock(message, at)) is { } said)
            {
                return said;
            }
        }

        return null;
    }

    // "in fifteen minutes", "half an hour", "ten days".
    private Said? Length(Message message, int from)
    {
        var tokens = message.Tokens;
        var at = from + Words.BeforeTime.LongestAt(tokens, from, out _);
        if (at < tokens.Count && Words.Durations.LongestAt(tokens, at, out var whole) is var length and > 0)
        {
            return new(from, at + length) { After = TimeSpan.FromMinutes(whole[0]) };
        }

        if (at >= tokens.Count || Number(message, at) is not { } number || number.End >= tokens.Count)
        {
            return null;
        }

        var unit = Words.Units.LongestAt(tokens, number.End, out var minutes);
        return unit > 0 && number.Value * minutes[0] is > 0 and < 600_000
            ? new(from, number.End + unit) { After = TimeSpan.FromMinutes(number.Value * minutes[0]) }
            : null;
    }

    // "tomorrow", "monday at 8", "tomorrow at 8".
    private Said? Day(Message message, int from)
    {
        var tokens = message.Tokens;
        var length = Words.Days.LongestAt(tokens, from, out var days);
        var weekday = length == 0 ? Words.Weekdays.LongestAt(tokens, from, out var week) > 0 ? week[0] : (DayOfWeek?)null : null;
        if (length == 0 && weekday is null)
        {
            return null;
        }

        var end = from + Math.Max(length, 1);
        var clock = end < tokens.Count ? Clock(message, end) : null;
        return new(from, clock?.End ?? end) { Days = length > 0 ? days[0] : null, Weekday = weekday, Clock = clock?.Clock, IsOpen = clock?.IsOpen ?? false };
    }

    // "at 8", "at 8:30 pm"; and the day after it, "at 8 tomorrow".
    private Said? Clock(Message message, int from)
    {
        var tokens = message.Tokens;
        var at = from + Words.At.LongestAt(tokens, from, out _);
        if (at >= tokens.Count || (at == from && tokens[at].Kind != TokenKind.Clock))
        {
            return null;
        }

        (int Hour, int Minute, int End)? read = null;
        if (tokens[at].Kind == TokenKind.Clock)
        {
            var parts = message.Text[tokens[at].Start..tokens[at].End].Split(':');
            read = parts.Length == 2 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var hour) && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var minute)
                ? (hour, minute, at + 1)
                : null;
        }
        else if (Number(message, at) is { } number && number.Value == Math.Floor(number.Value))
        {
            read = ((int)number.Value, 0, number.End);
        }

        return read is var (h, m, end) && h <= 23 && m <= 59 ? OfHalfDay(message, from, h, m, end) : null;
    }

    private Said OfHalfDay(Message message, int from, int hour, int minute, int end)
    {
        var tokens = message.Tokens;
        var isOpen = hour is >= 1 and <= 12;
        if (end < tokens.Count && Words.Halves.LongestAt(tokens, end, out var half) is var length and > 0)
        {
            (hour, isOpen, end) = (isOpen ? (hour % 12) + (half[0] ? 12 : 0) : hour, false, end + length);
        }

        var days = end < tokens.Count ? Words.Days.LongestAt(tokens, end, out var found) is var day and > 0 ? (found[0], day) : ((int, int)?)null : null;
        return new(from, end + (days?.Item2 ?? 0)) { Clock = new(hour, minute), IsOpen = isOpen, Days = days?.Item1 };
    }

    private (double Value, int End)? Number(Message message, int at)
    {
        var token = message.Tokens[at];
        if (token.Kind != TokenKind.Number && !lexicon.Numbers.Vocabulary.Begins(token))
        {
            return null;
        }

        var number = lexicon.NumberReader.Read(message.Text, message.Tokens, at, _ => false);
        return number.Found ? (number.Value, number.End) : null;
    }

    // What is said beside the time, without the word that joins it on; the longer of what stands before and after.
    private string About(Message message, int start, Said time)
    {
        var (before, after) = (Text(message, start, time.Start), Text(message, time.End, message.Tokens.Count));
        return after.Length >= before.Length ? after : before;
    }

    private string Text(Message message, int start, int end)
    {
        var tokens = message.Tokens;
        while (start < end && (tokens[start].EndsClause || Words.About.LongestAt(tokens, start, out _) > 0))
        {
            start++;
        }

        while (end > start && tokens[end - 1].EndsClause)
        {
            end--;
        }

        return start < end ? message.Text[tokens[start].Start..tokens[end - 1].End] : "";
    }

    private string? Contact(Message message, int start)
    {
        var tokens = message.Tokens;
        for (var at = start; at < tokens.Count; at++)
        {
            var length = Words.Contact.LongestAt(tokens, at, out _);
            if (length == 0 || at + length == tokens.Count)
            {
                continue;
            }

            var end = at + length;
            while (end < tokens.Count && end - at - length < 3 && !tokens[end].EndsClause && Words.ContactEnd.LongestAt(tokens, end, out _) == 0)
            {
                end++;
            }

            return end > at + length ? message.Text[tokens[at + length].Start..tokens[end - 1].End] : null;
        }

        return null;
    }

    private readonly record struct Said(int Start, int End)
    {
        public TimeSpan? After { get; init; }

        public int? Days { get; init; }

        public DayOfWeek? Weekday { get; init; }

        public TimeOnly? Clock { get; init; }

        public bool IsOpen { get; init; }
    }
}
