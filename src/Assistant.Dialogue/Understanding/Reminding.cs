namespace Assistant.Dialogue.Understanding;

/// <summary>What a message wants done later.</summary>
public enum RemindingKind
{
    /// <summary>To be told at that time.</summary>
    Reminder,

    /// <summary>To come back on that day.</summary>
    FollowUp,

    /// <summary>To be asked every so often whether all is well.</summary>
    CheckIn,

    /// <summary>Not to be asked any more.</summary>
    CheckOff,
}

/// <summary>A wish to be reminded as it was said; reckoned from when it was said by <see cref="DueAt"/>.</summary>
/// <param name="After">After what time, or how often; null where a day or a time of day is said.</param>
/// <param name="Days">How many days from today, or null.</param>
/// <param name="Weekday">The next such day, or null.</param>
/// <param name="Clock">The time of day, or null.</param>
/// <param name="IsHalfDayOpen">True where 8 may be morning or evening.</param>
/// <param name="About">What it is about, in the speaker's words; empty where they say nothing.</param>
/// <param name="Contact">Who is to be alerted, or null.</param>
public sealed record Reminding(
    RemindingKind Kind, TimeSpan? After, int? Days, DayOfWeek? Weekday, TimeOnly? Clock, bool IsHalfDayOpen, string About, string? Contact)
{
    private static readonly TimeOnly StartOfWork = new(8, 0);

    public bool HasTime => After is not null || Days is not null || Weekday is not null || Clock is not null;

    /// <summary>When it is due; null where no time was said. A day without a time means the start of work; an open hour means the next one.</summary>
    public DateTimeOffset? DueAt(DateTimeOffset now)
    {
        if (After is { } after)
        {
            return now + after;
        }

        if (!HasTime)
        {
            return null;
        }

        var days = Days ?? (Weekday is { } day ? (((int)day - (int)now.DayOfWeek + 6) % 7) + 1 : 0);
        var clock = Clock ?? StartOfWork;
        var due = new DateTimeOffset(now.Date.AddDays(days) + clock.ToTimeSpan(), now.Offset);
        if (due > now || Days is not null || Weekday is not null)
        {
            // "Today" without an hour is an hour from now.
            return due > now ? due : now.AddHours(1);
        }

        var evening = due.AddHours(12);
        return IsHalfDayOpen && evening > now ? evening : due.AddDays(1);
    }
}
