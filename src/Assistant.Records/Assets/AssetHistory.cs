using System.Collections.Immutable;
using Assistant.Records.Readings;

namespace Assistant.Records.Assets;

/// <summary>What is known of a piece of equipment and how it came to be known.</summary>
/// <param name="Changes">Every value a detail ever had, oldest first.</param>
/// <param name="Visits">The visits to it, newest first.</param>
public sealed record AssetHistory(Asset Asset, ImmutableArray<DetailChange> Changes, ImmutableArray<PastVisit> Visits)
{
    /// <summary>The values of one fact over all visits, oldest first; readings that were taken back are left out.</summary>
    public ImmutableArray<LoggedReading> ReadingsOf(string fact) =>
    [
        .. Visits.Reverse().SelectMany(v => v.Readings)
            .Where(r => r.Fact == fact && r.IsStanding),
    ];

    /// <summary>What was read differently on the last visit than on the one before it: the fact, then and now.</summary>
    public ImmutableArray<(LoggedReading Then, LoggedReading Now)> ChangedSinceLastVisit() => Visits.Length < 2 ? [] :
    [
        .. from now in Visits[0].Readings
           join then in Visits[1].Readings on now.Fact equals then.Fact
           where now.Standing == ReadingStanding.Counts && then.Standing == ReadingStanding.Counts
           where (now.Value, now.Unit, now.Word) != (then.Value, then.Unit, then.Word)
           select (then, now),
    ];
}

/// <summary>A detail that got a value, or another one.</summary>
/// <param name="Before">The value until then; null for the first.</param>
/// <param name="VisitId">The visit on which it was taken; null where it came with the record.</param>
public sealed record DetailChange(string Name, string? Before, string Text, DateTimeOffset At, string? VisitId);

/// <summary>A visit to the equipment.</summary>
/// <param name="Verdict">The last verdict said, or null.</param>
/// <param name="FollowUps">What was left to be done.</param>
public sealed record PastVisit(
    string VisitId,
    DateTimeOffset OpenedAt,
    DateTimeOffset? ClosedAt,
    Dialogue.Visits.VerdictGiven? Verdict,
    ImmutableArray<LoggedReading> Readings,
    ImmutableArray<Dialogue.Visits.FollowUpNoted> FollowUps)
{
    /// <summary>The faults put right.</summary>
    public ImmutableArray<string> Mended { get; init; } = [];

    /// <summary>The leaks found.</summary>
    public ImmutableArray<Dialogue.Visits.LeakFound> Leaks { get; init; } = [];
}
