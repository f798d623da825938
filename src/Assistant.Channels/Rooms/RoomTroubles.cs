namespace Assistant.Channels.Rooms;

/// <summary>
/// What fails over and over while it is tried again every few seconds: each kind of failure is news once, until what failed goes well
/// again. Not for use by several threads.
/// </summary>
internal sealed class RoomTroubles
{
    private readonly Dictionary<string, HashSet<Type>> open = new(StringComparer.Ordinal);

    /// <summary>True the first time that it fails in this way.</summary>
    /// <param name="what">What failed: a room, or one of the works for all of them.</param>
    public bool IsNews(string what, Exception failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        if (!open.TryGetValue(what, out var kinds))
        {
            open[what] = kinds = [];
        }

        return kinds.Add(failure.GetType());
    }

    /// <summary>It went well; true where it had failed before.</summary>
    public bool IsOver(string what) => open.Remove(what);
}
