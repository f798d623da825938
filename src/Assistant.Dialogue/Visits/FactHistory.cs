using System.Collections.Immutable;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Visits;

/// <summary>The values of one fact in the order of their times: a reading that comes in late stands where it was taken, and the latest counts.</summary>
internal static class FactHistory
{
    /// <summary>The place a value from the record was taken at: it is older than anything read on the visit.</summary>
    private const string Record = "record";

    /// <summary>The entries with one more; of two with the same time the one that came in later stands later.</summary>
    public static ImmutableList<TakenFact> With(ImmutableList<TakenFact> entries, TakenFact entry)
    {
        var at = entries.Count;
        while (at > 0 && TimeOf(entries[at - 1]) > TimeOf(entry))
        {
            at--;
        }

        return entries.Insert(at, entry);
    }

    /// <summary>The facts with what the entries' latest says: its value, or nothing where it was put out of date or is disputed.</summary>
    public static FactSet Apply(FactSet facts, Fact fact, ImmutableList<TakenFact> entries, bool isDisputed = false) =>
        isDisputed || entries.IsEmpty || entries[^1].Value is not { } value ? facts.Without(fact) : facts.With(value);

    /// <summary>True for what the record brought.</summary>
    public static bool IsOfRecord(TakenFact entry) => entry.Place == Record;

    private static DateTimeOffset TimeOf(TakenFact entry) => IsOfRecord(entry) ? DateTimeOffset.MinValue : entry.At;
}
