using System.Collections.Immutable;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Walks;

/// <summary>What a stop wants before the walk goes on.</summary>
public enum StopKind
{
    /// <summary>One fact.</summary>
    Asks,

    /// <summary>A word that something is done or seen.</summary>
    Confirms,

    /// <summary>Whatever fact would tell most now, until a fault is established or nothing more can be told.</summary>
    Proves,

    /// <summary>The leading fault's next thing to be done.</summary>
    Acts,

    /// <summary>Nothing: the walk is over.</summary>
    Ends,
}

/// <summary>One stop of a walk.</summary>
/// <param name="Place">Where it is taken; null for a stop that is taken wherever the technician is.</param>
/// <param name="Says">The key of the sentence that asks.</param>
/// <param name="Why">The key of the sentence that says why it is asked here.</param>
/// <param name="Cautions">Given when the stop is reached, once per person, place and day.</param>
/// <param name="Hazards">Given every time the stop is reached: the hands go there next.</param>
/// <param name="Until">What must hold before the walk goes on, beyond the fact being known or the word being said.</param>
/// <param name="IsRequired">True where the stop cannot be skipped.</param>
/// <param name="Remind">After what time the technician is reminded, or null.</param>
public sealed record WalkStop(
    string Name,
    StopKind Kind,
    string? Place,
    Fact? Asks,
    string Says,
    string Why,
    ImmutableArray<CautionCode> Cautions,
    ImmutableArray<CautionCode> Hazards,
    WalkCondition? Until,
    bool IsRequired,
    TimeSpan? Remind,
    ImmutableArray<WalkBranch> Next,
    int Line);

/// <summary>A way on from a stop; the first whose condition holds is taken.</summary>
/// <param name="When">Null: otherwise.</param>
/// <param name="Says">The key of what is said when this way is taken, or null.</param>
/// <param name="Take">A reading that from here on counts for another fact too, or null.</param>
public sealed record WalkBranch(WalkCondition? When, string Go, string? Says, CopiedFact? Take, int Line);

/// <summary>The value of <paramref name="From"/> is taken for <paramref name="To"/>.</summary>
public sealed record CopiedFact(Fact To, Fact From);

/// <summary>What putting one fault right needs.</summary>
/// <param name="Cautions">Given right before the hands go there, every time.</param>
/// <param name="Outdates">The facts to be read again once it is done.</param>
/// <param name="Remind">After what time the technician is reminded, or null.</param>
/// <param name="FollowUpDays">In how many days to come back where it cannot be done today, d.</param>
public sealed record FaultAction(ImmutableArray<CautionCode> Cautions, ImmutableArray<string> Outdates, TimeSpan? Remind, int FollowUpDays);
