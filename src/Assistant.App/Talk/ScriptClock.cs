namespace Assistant.App.Talk;

/// <summary>A clock that stands still until the script moves it on.</summary>
internal sealed class ScriptClock(DateTimeOffset start) : TimeProvider
{
    /// <summary>Where every script begins, so that repeated runs are alike.</summary>
    public static DateTimeOffset FixedStart { get; } = new(2026, 7, 14, 8, 0, 0, TimeSpan.Zero);

    private DateTimeOffset now = start;

    public override DateTimeOffset GetUtcNow() => now;

    public void MoveOn(TimeSpan time) => now += time;
}
