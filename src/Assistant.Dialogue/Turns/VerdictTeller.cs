using System.Collections.Immutable;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Says a verdict once, when its standing rises to likely or established or its leader changes, with what it rests on.</summary>
internal sealed class VerdictTeller(PhraseBook book, Assess assess)
{
    private const int MostRuledOutNamed = 3;
    private const int LeastReasonsForLikely = 2;

    /// <param name="leader">The leading fault where it is at least likely, otherwise null.</param>
    /// <param name="isLikelyNews">False where a fault that is only likely is not said yet.</param>
    public void Tell(TurnDraft draft, Assessment assessment, Finding? leader, bool isLikelyNews)
    {
        var last = draft.State.LastVerdict;
        if (FaultInHand.IsUnderRepair(draft.State) && leader is not { Standing: Standing.Established })
        {
            return;
        }

        if (leader is null || !IsWorthSaying(leader, isLikelyNews))
        {
            TakeBack(draft, last);
            return;
        }

        var (fault, standing) = (Codes.Of(leader.Code), Codes.Of(leader.Standing));
        if (last is not null && last.Fault == fault && (last.Standing == standing || leader.Standing != Standing.Established))
        {
            SayWhatIsNew(draft, leader);
            return;
        }

        if (last is { Standing: "established" } && last.Fault != fault && leader.Standing != Standing.Established && !draft.State.Mended.Exists(m => m.Fault == last.Fault))
        {
            draft.Say("verdict.withdrawn", ("fault", "fault." + last.Fault));
        }

        var units = draft.State.Units;
        var text = book.Say("verdict." + standing, units, ("fault", "fault." + fault));
        var because = leader.Because.Select(r => book.Say(r, units)).ToImmutableArray();
        draft.Say(new SaidPart("verdict." + standing, null, text));
        draft.Emit(new VerdictGiven(fault, standing, text.Full, [.. because.Select(b => b.Full)]) { At = draft.At, By = draft.By });
        foreach (var reason in because)
        {
            draft.AddReason(reason);
        }

        NameRuledOut(draft, assessment);
    }

    // A reading that was asked for to prove what is only likely is answered with what it showed.
    private void SayWhatIsNew(TurnDraft draft, Finding leader)
    {
        if (leader.Standing == Standing.Established || draft.Opening.Facts == draft.State.Facts)
        {
            return;
        }

        var before = assess(draft.Opening.Facts).Findings.FirstOrDefault(f => f.Code == leader.Code);
        foreach (var reason in leader.Because.Where(r => before is null || !before.Because.Any(b => b.Key == r.Key)))
        {
            draft.AddReason(book.Say(reason, draft.State.Units));
        }
    }

    // A likely fault that a single reading carries is the next question's business, not yet news; nor is a likely "no fault".
    private static bool IsWorthSaying(Finding leader, bool isLikelyNews) =>
        leader.Standing == Standing.Established
        || (isLikelyNews && leader.Code != FaultCode.NoFault && leader.Because.Length >= LeastReasonsForLikely);

    /// <summary>All the reasons for and against the leading fault, where its rule is from, and what else is possible.</summary>
    public void TellAll(TurnDraft draft, Assessment assessment)
    {
        var leading = assessment.Findings[0];
        var units = draft.State.Units;
        if (leading.Code != FaultCode.NotEnoughEvidence)
        {
            draft.AddReason(book.Say("verdict.about", units, ("standing", Codes.Of(leading.Standing)), ("fault", "fault." + Codes.Of(leading.Code))));
        }

        foreach (var reason in leading.Because)
        {
            draft.AddReason(book.Say(reason, units));
        }

        foreach (var reason in leading.Against)
        {
            var against = book.Say(reason, units);
            draft.AddReason(new(book.Say("reason.against", units, ("reason", against.Full)).Full, book.Say("reason.against", units, ("reason", against.Brief)).Brief));
        }

        if (leading.RuleSource.Length > 0)
        {
            draft.AddReason(book.Say("verdict.source", units, ("source", leading.RuleSource)));
        }

        var possible = assessment.Findings.Skip(1).Where(f => f.Standing != Standing.RuledOut).Take(MostRuledOutNamed).ToList();
        if (possible.Count > 0)
        {
            draft.AddReason(book.Say("verdict.open", units, ("faults", Names(possible))));
        }

        NameRuledOut(draft, assessment);
    }

    private void NameRuledOut(TurnDraft draft, Assessment assessment)
    {
        var ruledOut = assessment.Findings.Where(f => f.Standing == Standing.RuledOut).Take(MostRuledOutNamed).ToList();
        if (ruledOut.Count > 0)
        {
            draft.AddReason(book.Say("verdict.not-in-question", draft.State.Units, ("faults", Names(ruledOut))));
        }
    }

    private string Names(IEnumerable<Finding> findings) => string.Join("; ", findings.Select(f => book.Word("fault." + Codes.Of(f.Code))));

    private static void TakeBack(TurnDraft draft, GivenVerdict? last)
    {
        var nothing = Codes.Of(FaultCode.NotEnoughEvidence);
        if (last is null || last.Fault == nothing)
        {
            return;
        }

        // A fault that was put right needs no apology.
        if (!draft.State.Mended.Exists(m => m.Fault == last.Fault))
        {
            draft.Say("verdict.withdrawn", ("fault", "fault." + last.Fault));
        }

        draft.Emit(new VerdictGiven(nothing, Codes.Of(Standing.Possible), "", []) { At = draft.At, By = draft.By });
    }
}
