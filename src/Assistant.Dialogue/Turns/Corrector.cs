using System.Collections.Immutable;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Finds what a message corrects that names nothing: "no 48 not 84" is of the 84 that was said, and no answer to what is asked now.</summary>
internal sealed class Corrector(Understand understand)
{
    /// <summary>The message as the correction it is, or null where it is none or names by itself what it is of.</summary>
    public Understood? Redirect(VisitState state, string person, string text, UnderstandingContext context, Understood understood)
    {
        if (understood is not { Intent: Intent.Answer or Intent.Unknown, Correcting: { } correcting } || !state.Questioned.IsEmpty || !state.Disputes.IsEmpty)
        {
            return null;
        }

        var unasked = understand(text, context with { Expected = null });
        if (unasked.Readings.Length + unasked.Observations.Length > 0)
        {
            // "no, set at 38" right after the setpoint was told is of that, and not of the differential that is asked by now.
            return unasked is { Readings: [var told], Observations: [] } && Clarifier.IsWhole(unasked) && LastTold(state, person).Contains(told.Fact) ? unasked : null;
        }

        if (correcting.Denied.Select(number => WithValue(state, number)).FirstOrDefault(f => f is not null) is { } denied)
        {
            return As(denied, text, context);
        }

        return correcting.IsPlain || MayNotAnswer(context.Expected, understood) ? OfTheLast(LastTold(state, person), text, context, understood) : null;
    }

    // "no 44" where a number is asked answers nothing with its no; where a choice is asked it may.
    private static bool MayNotAnswer(Fact? expected, Understood understood) => expected is { IsQuantity: true } || !Clarifier.IsWhole(understood);

    // Of several things told at once, which one is put right is open. A bare "no" is no correction of a yes.
    private Understood? OfTheLast(ImmutableArray<Fact> told, string text, UnderstandingContext context, Understood understood) =>
        told.Where(f => f != context.Expected && (f.Kind != FactKind.YesNo || understood.Correcting!.IsPlain)).Select(f => As(f, text, context)).OfType<Understood>().ToList() switch
        {
            [] => null,
            [var only] => only,
            _ => understood with { Intent = Intent.Answer, Readings = [], Observations = [], Clarify = Clarify.Fact },
        };

    private Understood? As(Fact fact, string text, UnderstandingContext context)
    {
        var corrected = understand(text, context with { Expected = fact });
        return Clarifier.IsWhole(corrected) && corrected.Readings.All(r => r.Fact == fact) && corrected.Observations.All(o => o.Fact == fact) ? corrected : null;
    }

    // The reading of the visit that stands at this number, the latest of several.
    private static Fact? WithValue(VisitState state, double number) => state.History.Values
        .Where(entries => !entries.IsEmpty && entries[^1] is { Value: Reading reading } && reading.Value == number)
        .OrderByDescending(entries => entries[^1].Number).FirstOrDefault()?[^1].Value!.Fact;

    // What the speaker's last message told, where nothing else was said since.
    private static ImmutableArray<Fact> LastTold(VisitState state, string person) =>
    [
        .. state.History.Where(h => !h.Value.IsEmpty && h.Value[^1] is { Value: not null } latest && latest.By == person && latest.Number > state.LastMessage).Select(h => h.Key),
    ];
}
