using Assistant.Dialogue.Visits;

namespace Assistant.Records.Readings;

/// <summary>One value of one fact as it stands in the log.</summary>
/// <param name="Number">The event's place in the log.</param>
/// <param name="Value">The number as it was said, in <paramref name="Unit"/>; null for an observation.</param>
/// <param name="Place">Where it was taken; empty where it was questioned.</param>
/// <param name="WithdrawnBy">The event that took it back, or null.</param>
/// <param name="Doubt">Why it was questioned, or null.</param>
public sealed record LoggedReading(
    int Number, DateTimeOffset At, string By, string Fact, double? Value, string? Unit, string? Word, string Place, ReadingStanding Standing, int? WithdrawnBy, string? Doubt)
{
    /// <summary>True where it was right when it was taken, whether or not another one followed.</summary>
    public bool IsStanding => Standing is ReadingStanding.Counts or ReadingStanding.Superseded or ReadingStanding.Outdated;

    internal static LoggedReading Of(FactTaken e, ReadingStanding standing, int? withdrawnBy) =>
        new(e.Number, e.At, e.By, e.Fact, e.Value, e.Unit, e.Word, e.Place, standing, withdrawnBy, null);

    internal static LoggedReading Of(FactQuestioned e, int? withdrawnBy) =>
        new(e.Number, e.At, e.By, e.Fact, e.Value, e.Unit, e.Word, "", withdrawnBy is null ? ReadingStanding.Questioned : ReadingStanding.Withdrawn, withdrawnBy, e.Reason);
}
