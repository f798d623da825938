using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Leads along the walk: finds where it stands now, says what changed, gives the cautions, and asks the one next thing.</summary>
internal sealed class WalkGuide(PhraseBook book, WalkMachine machine, FactTaker taker, Assess assess)
{
    private readonly VerdictTeller verdicts = new(book);
    private readonly CautionGiver cautions = new(book);
    private readonly Asker asker = new(book);
    private readonly Closing closing = new(book, machine.Walk);

    public WalkDefinition Walk => machine.Walk;

    /// <summary>Brings the walk up to what the turn changed and closes the turn with the reply.</summary>
    /// <param name="assessment">What the rules make of the facts now, where the turn has asked them already.</param>
    public Turn Finish(TurnDraft draft, Assessment? assessment)
    {
        var judged = assessment ?? assess(draft.State.Facts);
        var view = new WalkView(Walk, draft.State, judged);
        if (draft.State.Outcome is not null)
        {
            return Reply(draft, view, Walk.Stop(draft.State.Stop ?? Walk.First.Name));
        }

        var here = machine.Locate(view);
        foreach (var way in here.Taken)
        {
            if (way.Says is { } says)
            {
                draft.Say(says);
            }

            if (way.Take is { } copy && draft.State.Facts.Has(copy.From))
            {
                view = view with { Assessment = taker.Copy(draft, copy.To, copy.From), Visit = draft.State };
            }
        }

        // In the room the next question is nearer than a guess; once something was read at the unit, a likely fault is news.
        verdicts.Tell(draft, view.Assessment, view.Leader, isLikelyNews: here.Stop.Kind is StopKind.Proves or StopKind.Acts || view.WasAt(Place.Unit));
        if (here.Stop.Kind == StopKind.Ends)
        {
            closing.Close(draft, view.Leader);
        }

        GoTo(draft, here.Stop, here.Place, view);
        return Reply(draft, view with { Visit = draft.State }, here.Stop);
    }

    /// <summary>Someone is hurt or in danger: everything else waits.</summary>
    public Turn Emergency(TurnDraft draft)
    {
        draft.Say("emergency.stop");
        cautions.Now(draft, CautionCode.Emergency, draft.State.Place ?? Walk.Places[0]);
        draft.Emit(new VisitPaused { At = draft.At, By = draft.By });
        draft.Say("emergency.after");
        var view = new WalkView(Walk, draft.State, assess(draft.State.Facts));
        return Reply(draft, view, Walk.Stop(draft.State.Stop ?? Walk.First.Name));
    }

    /// <summary>True where the stop waits for a word and not for a fact.</summary>
    public bool IsAtStep(VisitState state) => Stop(state).Kind is StopKind.Confirms or StopKind.Acts;

    /// <summary>The fact that is asked once the step the visit stands at is confirmed, or null: "31" at "tell me when you are there" answers ahead.</summary>
    public Fact? NextFact(VisitState state)
    {
        var stop = Stop(state);
        if (stop.Kind != StopKind.Confirms)
        {
            return null;
        }

        while (stop.Kind == StopKind.Confirms || (stop.Kind == StopKind.Asks && state.Facts.Has(stop.Asks!)))
        {
            stop = Walk.Stop(stop.Next[^1].Go);
        }

        return stop.Asks;
    }

    public Finding? Leader(VisitState state) => new WalkView(Walk, state, assess(state.Facts)).Leader;

    public void TellWhy(TurnDraft draft)
    {
        var state = draft.State;
        if (state.Questioned.Values.MinBy(q => q.Number) is { } questioned)
        {
            draft.Say(new Phrase(questioned.Reason, questioned.Reason));
            return;
        }

        var stop = Stop(state);
        if (stop.Why.Length > 0)
        {
            draft.Say(stop.Why);
        }

        if (stop.Kind is StopKind.Acts or StopKind.Proves)
        {
            verdicts.TellAll(draft, assess(state.Facts));
        }
    }

    public void TellMore(TurnDraft draft)
    {
        verdicts.TellAll(draft, assess(draft.State.Facts));
        if (draft.Because.IsEmpty)
        {
            draft.Say("command.more-nothing");
        }
    }

    public void Skip(TurnDraft draft)
    {
        var (state, stop) = (draft.State, Stop(draft.State));
        if (state.Questioned.Values.MinBy(q => q.Number) is { } questioned)
        {
            draft.Emit(new EventWithdrawn(questioned.Number) { At = draft.At, By = draft.By });
        }

        if (stop.IsRequired)
        {
            draft.Say("command.skip-refused");
            draft.Say(stop.Why);
            return;
        }

        if (stop.Kind == StopKind.Acts && Leader(state) is { Code: not FaultCode.NoFault } open)
        {
            closing.FollowUp(draft, open);
        }
        else
        {
            draft.Say("command.skipped");
        }

        draft.Emit(new StopSkipped(Walk.Name, stop.Name) { At = draft.At, By = draft.By });
    }

    /// <summary>"done": at a step it is confirmed, at a repair the fault is put right, anywhere else the visit ends early.</summary>
    public void Done(TurnDraft draft)
    {
        var stop = Stop(draft.State);
        var leader = stop.Kind == StopKind.Confirms ? null : Leader(draft.State);
        if (stop.Kind == StopKind.Acts && leader is not null && Walk.Action(leader.Code).Outdates is { IsEmpty: false } outdates)
        {
            draft.Emit(new FaultMended(Codes.Of(leader.Code), outdates) { At = draft.At, By = draft.By });
            Reopen(draft);
            draft.Say("taken.mended", ("fault", "fault." + Codes.Of(leader.Code)));
        }
        else if (stop.Kind is StopKind.Confirms or StopKind.Acts)
        {
            draft.Emit(new StopConfirmed(Walk.Name, stop.Name) { At = draft.At, By = draft.By });
            draft.Say("taken.confirmed");
        }
        else
        {
            draft.Say("close.early");
            verdicts.TellAll(draft, assess(draft.State.Facts));
            closing.Close(draft, leader);
        }
    }

    // What was left out on the way to one fault is open again for the next.
    private void Reopen(TurnDraft draft)
    {
        foreach (var stop in Walk.Stops.Where(s => s.Kind is StopKind.Proves or StopKind.Acts))
        {
            if (draft.State.Skipped.TryGetValue(stop.Name, out var skipped))
            {
                draft.Emit(new EventWithdrawn(skipped) { At = draft.At, By = draft.By });
            }
        }
    }

    private WalkStop Stop(VisitState state) => Walk.Find(state.Stop ?? "") ?? Walk.First;

    private void GoTo(TurnDraft draft, WalkStop stop, string place, WalkView view)
    {
        var state = draft.State;
        var fact = stop.Kind == StopKind.Proves ? view.Assessment.Next : stop.Asks;
        var about = stop.Kind == StopKind.Acts && view.Leader is { } leader ? Codes.Of(leader.Code) : fact?.Name;

        // A stop without a place is taken where the technician is, unless the fact it wants is elsewhere.
        var there = stop.Place ?? PlaceOf(fact) ?? state.Place ?? place;
        if (state.Stop == stop.Name && state.About == about && state.Place == there)
        {
            GiveOpen(draft, view, there);
            return;
        }

        if (state.Place == "unit" && there == "room")
        {
            draft.Say("walk.back-to-room");
        }

        draft.Emit(new StopReached(Walk.Name, stop.Name, there) { At = draft.At, By = draft.By, About = about });
        var action = stop.Kind == StopKind.Acts && view.Leader is not null ? Walk.Action(view.Leader.Code) : null;
        foreach (var caution in action is null ? stop.Hazards : stop.Hazards.AddRange(action.Cautions))
        {
            cautions.Now(draft, caution, there);
        }

        foreach (var caution in stop.Cautions)
        {
            cautions.Once(draft, caution, there);
        }

        GiveOpen(draft, view, there);
        if ((stop.Remind ?? action?.Remind) is { } remind)
        {
            var what = action is null ? book.Word(stop.Asks?.Name ?? "fact." + stop.Name) : book.Word("fault." + about);
            draft.Emit(new ReminderSet(draft.At + remind, book.Say("remind.stop", state.Units, ("stop", what)).Full) { At = draft.At, By = draft.By });
            draft.Say("walk.remind", ("time", new Amount(remind.TotalSeconds, Dimension.Time)));
        }
    }

    private void GiveOpen(TurnDraft draft, WalkView view, string place)
    {
        var isTold = view.Leader is { } leader && draft.State.LastVerdict?.Fault == Codes.Of(leader.Code);
        cautions.Open(draft, view.Assessment.Cautions, place, isTold);
    }

    private static string? PlaceOf(Fact? fact) => fact?.Place switch
    {
        Place.Room => "room",
        Place.Unit => "unit",
        _ => null,
    };

    private Turn Reply(TurnDraft draft, WalkView view, WalkStop stop)
    {
        var state = draft.State;
        var asked = asker.For(state, stop, view.Assessment, view.Leader);
        var reply = new Reply(
            draft.Said,
            draft.Because,
            draft.Cautions,
            asked.Ask,
            asked.Choices,
            asked.Fact?.Name,
            asked.Fact is null ? [] : [.. FactUnits.For(asked.Fact, state.Units).Select(u => u.Symbol)],
            state is { Walk: { } walk, Stop: { } name, Place: { } place } ? new(walk, name, place) : null,
            [.. view.Assessment.Findings.Where(f => f.Standing != Standing.RuledOut).Select(f => new Verdict(Codes.Of(f.Code), Codes.Of(f.Standing)))]);
        return new(draft.Events, state, reply);
    }
}
