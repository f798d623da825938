using System.Globalization;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Says what became of the value just taken: it counts, it corrects another, or a later reading counts and it stands beside.</summary>
internal static class Acknowledgement
{
    /// <param name="before">What the fact was, or null where it was unknown or is read anew.</param>
    /// <param name="isAnew">True where it is read again and again: what another read a minute ago is the course of it and no other opinion.</param>
    public static void Say(TurnDraft draft, Fact fact, FactValue? before, bool isAnew = false)
    {
        var number = draft.State.Version;
        if (!isAnew && WithAnother(draft, fact, number))
        {
            return;
        }

        var history = draft.State.History[fact];
        var (taken, counts) = (history.Find(entry => entry.Number == number)!, history[^1]);
        var value = FactText.Of(taken.Value!);
        if (counts.Number != taken.Number)
        {
            if (draft.State.Disputes.ContainsKey(fact))
            {
                draft.Say("late.noted", ("fact", fact.Name), ("value", value), ("time", Time(taken.At)));
            }
            else if (counts.Value is { } other)
            {
                draft.Say("late.beside", ("fact", fact.Name), ("value", value), ("time", Time(taken.At)), ("other", FactText.Of(other)), ("then", Time(counts.At)));
            }
            else
            {
                draft.Say("late.outdated", ("fact", fact.Name), ("value", value), ("time", Time(taken.At)));
            }
        }
        else if (before is null || before == taken.Value)
        {
            draft.Say(taken.Value is Reading ? "taken.reading" : "taken.observation", ("fact", fact.Name), ("value", value));
        }
        else
        {
            draft.Say("taken.corrected", ("fact", fact.Name), ("value", value), ("before", FactText.Of(before)));
        }
    }

    // Two within moments: where they agree it is said shortly, where not it is asked which counts, whichever of them came in first.
    private static bool WithAnother(TurnDraft draft, Fact fact, int number)
    {
        if (Disputes.Pair(draft.State.History[fact]) is not var (earlier, latest))
        {
            return false;
        }

        var taken = earlier.Number == number ? earlier : latest;
        var isOneOfThem = taken.Number == number;
        var isDisputed = Disputes.Differ(earlier, latest);
        if (isDisputed)
        {
            draft.Emit(new ReadingsDiffer(fact.Name, earlier.Number, latest.Number) { At = draft.At, By = draft.By });
        }

        if (isOneOfThem)
        {
            var other = taken == earlier ? latest : earlier;
            draft.Say(
                isDisputed ? "differ.noted" : "differ.agrees", ("fact", fact.Name), ("value", FactText.Of(taken.Value!)), ("person", other.By), ("other", FactText.Of(other.Value!)));
        }

        return isOneOfThem;
    }

    private static string Time(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
