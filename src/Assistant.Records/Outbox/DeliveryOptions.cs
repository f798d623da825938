namespace Assistant.Records.Outbox;

/// <summary>How patiently replies are delivered.</summary>
public sealed record DeliveryOptions
{
    /// <summary>The wait after the first failure; it doubles with each further one. Default: 5 s.</summary>
    public TimeSpan FirstWait { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>The longest wait between two attempts. Default: 15 min.</summary>
    public TimeSpan LongestWait { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>How many attempts are made before a reply is given up. Default: 20, which with the other defaults is about three and a half hours.</summary>
    public int Attempts { get; init; } = 20;

    /// <summary>
    /// How long a report is waited for where an attempt ended without an answer, because the program was stopped or the line broke:
    /// made again at once, the reply might come twice. Default: 20 s.
    /// </summary>
    public TimeSpan Doubt { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>A room's replies wait until nothing came for so long, to go out as one. Default: 1 s.</summary>
    public TimeSpan Quiet { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>And never longer than this. Default: 3 s.</summary>
    public TimeSpan LongestQuiet { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>The wait before the attempt after that many.</summary>
    public TimeSpan WaitAfter(int attempts) =>
        TimeSpan.FromSeconds(Math.Min(LongestWait.TotalSeconds, FirstWait.TotalSeconds * Math.Pow(2, Math.Clamp(attempts - 1, 0, 30))));
}
