namespace Assistant.Channels.Xmpp;

/// <summary>How long is waited before the server is tried again: twice as long each time, with a part left to chance, so that not all come back at once.</summary>
/// <param name="Chance">A number from 0 up to 1.</param>
internal sealed record XmppPace(TimeSpan First, TimeSpan Longest, Func<double> Chance)
{
    /// <summary>From one second up to a minute.</summary>
    public static XmppPace Usual { get; } = new(TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(1), Random.Shared.NextDouble);

    public TimeSpan WaitAfter(int failures)
    {
        var whole = Math.Min(Longest.TotalSeconds, First.TotalSeconds * Math.Pow(2, Math.Clamp(failures - 1, 0, 20)));
        return TimeSpan.FromSeconds(whole * (0.75 + (0.25 * Chance())));
    }
}
