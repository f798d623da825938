using System.Collections.Immutable;

namespace Assistant.Dialogue.Visits;

/// <summary>
/// The cautions of where a visit stands now. One that was given in reply to somebody else's words was not heard by who only listens, and
/// the hands may be theirs.
/// </summary>
public static class StandingCautions
{
    /// <summary>The codes given since the walk came to its stop, but not to this person; each once, in their order.</summary>
    public static ImmutableArray<string> NotGivenTo(string person, IReadOnlyList<VisitEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        var given = events.Reverse().TakeWhile(e => e is not StopReached).OfType<CautionGiven>().Reverse().ToList();
        var heard = given.Where(g => g.By == person).Select(g => g.Caution).ToHashSet(StringComparer.Ordinal);
        return [.. given.Select(g => g.Caution).Where(c => !heard.Contains(c)).Distinct()];
    }
}
