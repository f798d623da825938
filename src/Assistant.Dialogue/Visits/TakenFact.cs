using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Visits;

/// <summary>One entry of a fact's history on a visit.</summary>
/// <param name="Number">The event that took it.</param>
/// <param name="Value">What was found; null where a mended fault made the value before it out of date.</param>
/// <param name="Place">Where it was taken: room, unit, record, ...</param>
/// <param name="Stop">The stop that asked for it, or null where it was volunteered.</param>
public sealed record TakenFact(int Number, FactValue? Value, DateTimeOffset At, string By, string? Place, string? Stop)
{
    /// <summary>The entry that this one puts right and stands for, or null.</summary>
    public TakenFact? InsteadOf { get; init; }
}

/// <summary>A value that was heard but is kept out of the verdict until the technician confirms it.</summary>
/// <param name="Reason">The key of the phrase that says why.</param>
public sealed record QuestionedValue(int Number, FactValue Value, string Reason);

/// <summary>What was left open and asked back.</summary>
/// <param name="What">unit, fact, value, sign or range.</param>
/// <param name="Text">The message that left it open.</param>
public sealed record OpenClarification(int Number, string What, Fact? Fact, double? Heard, string Text);

/// <summary>A verdict that was said.</summary>
public sealed record GivenVerdict(int Number, string Fault, string Standing, string Text, DateTimeOffset At);

/// <summary>A caution as it was given: once per person, place and day.</summary>
public sealed record GivenCaution(string Caution, string Person, string Place, DateOnly Day);

/// <summary>Somebody said that they or others are in danger.</summary>
public sealed record CalledEmergency(string By, DateTimeOffset At);

public sealed record StoredPicture(int Number, string PictureId, string Caption, string? Stop, DateTimeOffset At, string By);

public sealed record OpenReminder(int Number, DateTimeOffset Due, string About);

public sealed record NotedFollowUp(int Number, DateOnly Due, string What);

/// <summary>What "undo" takes back: an event and the message that led to it.</summary>
public sealed record UndoableEvent(int Number, int Message);
