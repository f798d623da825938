using System.Collections.Immutable;
using Assistant.Dialogue.Judgements;
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

    /// <summary>One of its own options: a finding that is no fact of the plant.</summary>
    Chooses,

    /// <summary>A judgement over what was read, after a reading of its own where it asks for one.</summary>
    Judges,

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
    int Line)
{
    /// <summary>True where the reading is taken anew at each passage, whatever was read before.</summary>
    public bool Repeats { get; init; }

    /// <summary>What is chosen here, or null.</summary>
    public StopChoice? Choice { get; init; }

    /// <summary>What is judged here, or null.</summary>
    public StopJudgement? Judgement { get; init; }

    /// <summary>The walk proposed when this end is reached, or null.</summary>
    public string? Offers { get; init; }

    /// <summary>True for an end that closes the visit.</summary>
    public bool Closes { get; init; }

}

/// <summary>The options of a stop that chooses.</summary>
/// <param name="Name">What the choice is kept under, one a walk.</param>
public sealed record StopChoice(string Name, ImmutableArray<StopOption> Options)
{
    /// <summary>The option a message names, or null: as the whole message, else as the only one named in it.</summary>
    /// <param name="plain">In small letters, without punctuation.</param>
    /// <param name="isWhole">True to take the whole message only.</param>
    public string? Find(string plain, bool isWhole)
    {
        if (Options.FirstOrDefault(o => o.Words.Contains(plain)) is { } whole)
        {
            return whole.Name;
        }

        if (isWhole)
        {
            return null;
        }

        var padded = $" {plain} ";
        var named = Options.Where(o => o.Words.Any(w => padded.Contains($" {w} ", StringComparison.Ordinal))).ToList();
        return named.Count == 1 ? named[0].Name : null;
    }
}

/// <summary>One option with the words that name it, in small letters.</summary>
public sealed record StopOption(string Name, ImmutableArray<string> Words);

/// <summary>The judgement of a stop.</summary>
/// <param name="Again">The outcomes on which the stop asks for a further reading.</param>
/// <param name="Since">The stop from which on readings count; null: since the walk, or its present passage, began.</param>
public sealed record StopJudgement(Judgement Judgement, ImmutableArray<string> Again, string? Since);

/// <summary>A way on from a stop; the first whose condition holds is taken.</summary>
/// <param name="When">Null: otherwise.</param>
/// <param name="Says">The key of what is said when this way is taken, or null.</param>
/// <param name="Take">A reading that from here on counts for another fact too, or null.</param>
/// <param name="IsBack">True where the way leads back: that stop and all after it are passed anew.</param>
public sealed record WalkBranch(WalkCondition? When, string Go, string? Says, CopiedFact? Take, bool IsBack, int Line);

/// <summary>The value of <paramref name="From"/> is taken for <paramref name="To"/>.</summary>
public sealed record CopiedFact(Fact To, Fact From);

/// <summary>What putting one fault right needs.</summary>
/// <param name="Cautions">Given right before the hands go there, every time.</param>
/// <param name="Outdates">The facts to be read again once it is done.</param>
/// <param name="Remind">After what time the technician is reminded, or null.</param>
/// <param name="FollowUpDays">In how many days to come back where it cannot be done today, d.</param>
/// <param name="Walk">The walk that leads through it, or null.</param>
public sealed record FaultAction(ImmutableArray<CautionCode> Cautions, ImmutableArray<string> Outdates, TimeSpan? Remind, int FollowUpDays, string? Walk);
