using Assistant.Trade.Quantities;

namespace Assistant.Records.Conversations;

/// <summary>What holds for conversations unless a visit says otherwise.</summary>
public sealed record ConversationOptions
{
    /// <summary>The units of a visit that a first message opens. Default: US.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Us;

    /// <summary>The site's name on such a visit. Default: "unnamed site".</summary>
    public string UnnamedSite { get; init; } = "unnamed site";

    /// <summary>How long after its visit was closed a conversation still speaks of it ("report", "undo"); later a new visit opens. Default: 2 h.</summary>
    public TimeSpan AfterClosing { get; init; } = TimeSpan.FromHours(2);

    /// <summary>How many visits' states are kept in memory. Default: 1000.</summary>
    public int StatesKept { get; init; } = 1000;

    /// <summary>How often a message is tried again when others write to its visit at the same time. Default: 20.</summary>
    public int Attempts { get; init; } = 20;

    /// <summary>How new visits are named. Default: time-ordered unique ids.</summary>
    public Func<string> NewVisitId { get; init; } = static () => Guid.CreateVersion7().ToString("N");
}
