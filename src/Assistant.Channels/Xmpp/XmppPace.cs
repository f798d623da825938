namespace Assistant.Channels.Xmpp;

/// <summary>
/// How long is waited before the server is tried again: twice as long each time, with a part left to chance, so that not all come back at
/// once; and how often it is looked after.
/// </summary>
/// <param name="Chance">A number from 0 up to 1.</param>
internal sealed record XmppPace(TimeSpan First, TimeSpan Longest, Func<double> Chance)
{
    /// <summary>From one second up to a minute.</summary>
    public static XmppPace Usual { get; } = new(TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(1), Random.Shared.NextDouble);

    /// <summary>After a refusal, a kick or a taken name the room is tried again. Default: 1 min.</summary>
    public TimeSpan BeforeReturn { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>Silence for so long is asked into, and four times as long ends the line. Default: 15 s.</summary>
    public TimeSpan Beat { get; init; } = TimeSpan.FromSeconds(15);

    public TimeSpan WaitAfter(int failures)
    {
        var whole = Math.Min(Longest.TotalSeconds, First.TotalSeconds * Math.Pow(2, Math.Clamp(failures - 1, 0, 20)));
        return TimeSpan.FromSeconds(whole * (0.75 + (0.25 * Chance())));
    }
}
