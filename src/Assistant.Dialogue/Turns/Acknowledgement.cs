using System.Globalization;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Says what became of the value just taken: it counts, it corrects another, or a later reading counts and it stands beside.</summary>
internal static class Acknowledgement
{
    /// <param name="before">What the fact was, or null where it was unknown or is read anew.</param>
    public static void Say(TurnDraft draft, Fact fact, FactValue? before)
    {
        var history = draft.State.History[fact];
        var (taken, counts) = (history.Find(entry => entry.Number == draft.State.Version)!, history[^1]);
        var value = FactText.Of(taken.Value!);
        if (counts.Number != taken.Number)
        {
            if (counts.Value is { } other)
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

    private static string Time(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
