using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Takes an answer: the values it brings, what it leaves open, and what of it was not taken, which is always said.</summary>
internal sealed class AnswerTaker(ShortWords words, Hearing hearing, OwnWords own, FactTaker taker, WalkGuide guide)
{
    public Turn Take(TurnDraft draft, Understood understood, InboundMessage message)
    {
        IEnumerable<FactValue> values = [.. understood.Readings, .. understood.Observations];
        var plain = ShortWords.Plain(message.Text);
        if (!values.Any() && own.Choose(draft, plain, isWhole: false) is { } chosen)
        {
            // "heater is dead, open circuit" where it was asked why the coil iced.
            return chosen;
        }

        var assessment = values.Any() ? taker.Take(draft, values, guide.Stand.Stop(draft.State), understood.Correcting is not null) : null;
        if (understood.Clarify is not null && !IsAnswered(draft, understood, values))
        {
            draft.Emit(Clarifier.Event(understood, new(message.Text, message.Person, message.At), hearing.Asked(draft.State)?.Name));

            // One number is asked back; of several, those that were not taken are named.
            if (understood.Unheard.Length > 1)
            {
                draft.Say("unknown.numbers", ("words", string.Join(", ", understood.Unheard)));
            }
        }
        else if (!understood.Unheard.IsEmpty)
        {
            draft.Say("unknown.part", ("words", string.Join(", ", understood.Unheard)));
        }

        if (ConfirmsSafety(draft, plain))
        {
            guide.Steps.Done(draft, isOfTheVisit: false);
        }

        return guide.Finish(draft, assessment);
    }

    // What was asked came with it: the rest is named, and what was asked is not asked again.
    private bool IsAnswered(TurnDraft draft, Understood understood, IEnumerable<FactValue> values) =>
        understood is { Clarify: Clarify.Value or Clarify.Fact, Impossible: null, OpenSpan: null, OpenUnit: null, Unheard: [_, ..] }
            && hearing.Asked(draft.Opening) is { } asked && values.Any(v => v.Fact == asked);

    // "all safe, R-404A cooler": that it is safe is heard with what is told in the same breath.
    private bool ConfirmsSafety(TurnDraft draft, string plain) =>
        guide.Stand.IsAtStep(draft.State) && guide.Stand.Walk(draft.State) == guide.Stand.Library.Opening && guide.Stand.Stop(draft.State) == guide.Stand.Library.Opening.First && words.BeginsSafe(plain);
}
