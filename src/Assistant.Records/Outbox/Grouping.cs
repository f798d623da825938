namespace Assistant.Records.Outbox;

/// <summary>Which conversations' replies wait for each other, and for how long.</summary>
/// <param name="Groups">True for a room of several people.</param>
/// <param name="Quiet">What comes within this of the last one goes out with it.</param>
/// <param name="Longest">The first one waits no longer than this.</param>
public sealed record Grouping(Func<string, bool> Groups, TimeSpan Quiet, TimeSpan Longest)
{
    /// <summary>No more replies than this go out as one.</summary>
    public const int Most = 20;

    /// <param name="first">When the first that waits was due.</param>
    /// <param name="last">When the last was.</param>
    public bool IsReady(string conversation, DateTimeOffset first, DateTimeOffset last, DateTimeOffset now) =>
        !Groups(conversation) || last + Quiet <= now || first + Longest <= now;
}
