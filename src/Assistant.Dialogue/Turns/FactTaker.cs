using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Takes what a message brought: into the facts what fits, into question what cannot be or contradicts the rest.</summary>
internal sealed class FactTaker(PhraseBook book, Assess assess)
{
    /// <summary>A slip is put right within this time.</summary>
    private static readonly TimeSpan Slips = TimeSpan.FromMinutes(30);

    /// <summary>Takes the values, acknowledges each, and gives what the rules make of the facts now.</summary>
    /// <param name="at">The stop they were said at: what it reads anew corrects nothing, and what it judges is named by the judgement.</param>
    /// <param name="putsRight">True where the message says that what it tells was said wrong before.</param>
    public Assessment Take(TurnDraft draft, IEnumerable<FactValue> heard, WalkStop at, bool putsRight = false)
    {
        // A fact named twice counts once, the later value.
        var values = heard.GroupBy(v => v.Fact).Select(g => g.Last()).ToImmutableArray();
        var before = draft.State;
        DropIgnoredQuestions(draft, values);
        var assessment = assess(values.Aggregate(before.Facts, (facts, value) => facts.With(value)));
        var rejections = assessment.Rejected.Where(r => values.Contains(r.Value) && before.Facts.Find(r.Value.Fact) != r.Value).ToList();
        foreach (var value in values)
        {
            if (rejections.Find(r => r.Value == value) is { } rejection)
            {
                Question(draft, value, rejection.Why);
            }
            else
            {
                var isAnew = at.Repeats && at.Asks == value.Fact;
                if (putsRight && !isAnew && SaidWrong(draft, value) is { } wrong)
                {
                    draft.Emit(new EventWithdrawn(wrong.Number) { At = draft.At, By = draft.By, IsCorrection = true });
                }

                Emit(draft, value);
                if (!isAnew || at.Judgement is null)
                {
                    Acknowledgement.Say(draft, value.Fact, isAnew ? null : before.Facts.Find(value.Fact), isAnew);
                }
            }
        }

        if (!putsRight && IsIceOff(before, draft.State))
        {
            draft.Emit(new FaultMended(Codes.Of(FaultCode.CoilIced), []) { At = draft.At, By = draft.By });
            draft.Say("taken.ice-off");
            assessment = assess(draft.State.Facts);
        }

        if (rejections.Count > 0 || values.Any(v => draft.State.Disputes.ContainsKey(v.Fact)))
        {
            assessment = assess(draft.State.Facts);
        }

        DerivedText.Say(draft, assessment.Derived, values.Where(v => draft.State.Facts.Has(v.Fact)), draft.State.Facts);
        return assessment;
    }

    /// <summary>Takes a questioned value after all, because the technician stands by it.</summary>
    public Assessment Confirm(TurnDraft draft, QuestionedValue questioned)
    {
        Emit(draft, questioned.Value);
        var assessment = assess(draft.State.Facts);
        var keptOut = assessment.Rejected.Any(r => r.Value.Fact == questioned.Value.Fact);
        draft.Say(keptOut ? "question.kept-out" : "question.kept", ("fact", questioned.Value.Fact.Name), ("value", FactText.Of(questioned.Value)));
        return assessment;
    }

    /// <summary>Takes a value for another fact too, as the walk's way says.</summary>
    public Assessment Copy(TurnDraft draft, Fact to, Fact from)
    {
        if (draft.State.Facts.Find(from) is Reading reading)
        {
            var copy = reading with { Fact = to };
            Emit(draft, copy);
            draft.Say("taken.copied", ("value", FactText.Of(copy)), ("fact", FactCatalogue.BoxTemperature.Name));
        }

        return assess(draft.State.Facts);
    }

    public static FactTaken Event(FactValue value, string place, string? stop, DateTimeOffset at, string by) => value switch
    {
        Reading reading => new(value.Fact.Name, reading.Value, reading.Unit.Symbol, null, place, stop) { At = at, By = by },
        Observation seen => new(value.Fact.Name, null, null, seen.Value, place, stop) { At = at, By = by },
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "Neither a reading nor an observation."),
    };

    // A coil that was blocked and is clear now was put right, and no verdict on it was wrong.
    private static bool IsIceOff(VisitState before, VisitState now) =>
        before.LastVerdict?.Fault == Codes.Of(FaultCode.CoilIced) && before.Facts.Is(FactCatalogue.CoilIce, "blocked") && now.Facts.Has(FactCatalogue.CoilIce) && !now.Facts.Is(FactCatalogue.CoilIce, "blocked");

    // What the speaker told of it a while ago, where nothing was put right since: later it is the course of things that is told.
    private static TakenFact? SaidWrong(TurnDraft draft, FactValue value) =>
        draft.State.History.GetValueOrDefault(value.Fact, []) is [.., { Value: { } told } latest] && told != value && latest.By == draft.By && !FactHistory.IsOfRecord(latest)
            && draft.At - latest.At <= Slips && !draft.State.Mended.Exists(m => m.Number > latest.Number)
            ? latest
            : null;

    private static void Emit(TurnDraft draft, FactValue value)
    {
        var state = draft.State;
        var place = value.Fact.Place == Place.Anywhere ? state.Place ?? "room" : value.Fact.Place.ToString().ToLowerInvariant();
        draft.Emit(Event(value, place, state.About == value.Fact.Name ? state.Stop : null, draft.At, draft.By));
    }

    private void Question(TurnDraft draft, FactValue value, Reason why)
    {
        var reason = book.Say(why, draft.State.Units);
        var (number, unit, word) = value is Reading reading ? (reading.Value, reading.Unit.Symbol, null) : ((double?)null, (string?)null, ((Observation)value).Value);
        draft.Emit(new FactQuestioned(value.Fact.Name, number, unit, word, reason.Full) { At = draft.At, By = draft.By });
        draft.Say("question.raised", ("fact", value.Fact.Name), ("value", FactText.Of(value)), ("reason", reason.Full));
    }

    // A value that was questioned and then passed over is dropped: the walk asks for it again in its turn.
    private static void DropIgnoredQuestions(TurnDraft draft, ImmutableArray<FactValue> values)
    {
        if (!values.Any(v => draft.State.Questioned.ContainsKey(v.Fact)))
        {
            foreach (var (_, questioned) in draft.State.Questioned)
            {
                draft.Emit(new EventWithdrawn(questioned.Number) { At = draft.At, By = draft.By });
                draft.Say("question.passed-over", ("fact", questioned.Value.Fact.Name), ("value", FactText.Of(questioned.Value)));
            }
        }
    }
}
