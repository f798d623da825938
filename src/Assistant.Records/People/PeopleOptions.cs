namespace Assistant.Records.People;

/// <summary>How strict enrolment is.</summary>
public sealed record PeopleOptions
{
    /// <summary>How long a code is good. Default: 24 h.</summary>
    public TimeSpan CodeLifetime { get; init; } = TimeSpan.FromHours(24);

    /// <summary>The time in which tries are counted. Default: 1 h.</summary>
    public TimeSpan TriesWindow { get; init; } = TimeSpan.FromHours(1);

    /// <summary>How many wrong codes one address may send in that time. Default: 5.</summary>
    public int TriesOfAnAddress { get; init; } = 5;

    /// <summary>How many wrong codes all addresses together may send in that time. Default: 200.</summary>
    public int TriesInAll { get; init; } = 200;
}
