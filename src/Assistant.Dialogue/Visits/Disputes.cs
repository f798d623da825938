using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Dialogue.Visits;

/// <summary>
/// Two people read one thing within moments and found it different: both are kept, and neither counts until somebody says which does
/// or it is read again.
/// </summary>
/// <param name="One">The event of the earlier reading.</param>
/// <param name="Other">The event of the later one.</param>
public sealed record ReadingsDiffer(string Fact, int One, int Other) : VisitEvent;

/// <summary>A difference that waits to be settled.</summary>
public sealed record Dispute(TakenFact One, TakenFact Other);

/// <summary>A difference that was settled: the event that did so, the reading it took out and the one that counts.</summary>
public sealed record SettledDispute(int Number, Fact Fact, TakenFact Lost, int Counts);

/// <summary>Looks for what two people read within moments.</summary>
internal static class Disputes
{
    /// <summary>Within this time of each other two people answered the same question.</summary>
    private static readonly TimeSpan Moments = TimeSpan.FromMinutes(2);

    /// <summary>
    /// The latest value by the time it was taken and the one another person took shortly before it, or null where nobody did. It depends
    /// on those times alone and not on which came in first.
    /// </summary>
    public static (TakenFact Earlier, TakenFact Latest)? Pair(ImmutableList<TakenFact> entries)
    {
        if (entries.IsEmpty || entries[^1] is not { Value: not null } latest || FactHistory.IsOfRecord(latest))
        {
            return null;
        }

        for (var at = entries.Count - 2; at >= 0; at--)
        {
            var entry = entries[at];
            if (entry.Value is null || FactHistory.IsOfRecord(entry) || latest.At - entry.At > Moments)
            {
                return null;
            }

            if (entry.By != latest.By)
            {
                return (entry, latest);
            }
        }

        return null;
    }

    /// <summary>True where two instruments can not have shown the two values of one thing.</summary>
    public static bool Differ(TakenFact one, TakenFact other) => !InstrumentError.Agree(one.Value!, other.Value!);
}
