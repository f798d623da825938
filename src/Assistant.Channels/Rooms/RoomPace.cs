namespace Assistant.Channels.Rooms;

/// <summary>How what is new is gathered before a room is told.</summary>
/// <param name="Quiet">What comes within this of the last one goes into the same post.</param>
/// <param name="Longest">What came first waits no longer than this.</param>
public sealed record RoomPace(TimeSpan Quiet, TimeSpan Longest)
{
    /// <summary>1.5 s of quiet, and 10 s at the most; first of all after a second.</summary>
    public static RoomPace Usual { get; } = new(TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(10)) { BeforeTheFirst = TimeSpan.FromSeconds(1) };

    /// <summary>How long after a start it is first looked for what was left untold: whoever waits for the program to answer goes first. Default: at once.</summary>
    public TimeSpan BeforeTheFirst { get; init; }

    /// <summary>How often it is looked whether the time has come. Default: 0.1 s.</summary>
    public TimeSpan Beat { get; init; } = TimeSpan.FromSeconds(0.1);

    /// <summary>How often it is looked for what another program heard, where its news did not come. Default: 5 s.</summary>
    public TimeSpan BetweenLooks { get; init; } = TimeSpan.FromSeconds(5);

    public bool IsOver(TimeSpan sinceFirst, TimeSpan sinceLast) => sinceLast >= Quiet || sinceFirst >= Longest;
}
