using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>Leads along the walk: finds where it stands now, says what changed, gives the cautions, and asks the one next thing.</summary>
internal sealed class WalkGuide
{
    // More rounds than walks can end and stops can be passed anew by one message.
    private const int MostRounds = 12;

    private readonly WalkLibrary library;
    private readonly FactTaker taker;
    private readonly Assess assess;
    private readonly VerdictTeller verdicts;
    private readonly CautionGiver cautions;
    private readonly JudgementTeller judgements;
    private readonly StopArrival arrival;
    private readonly Asker asker;
    private readonly Closing closing;

    public WalkGuide(PhraseBook book, WalkLibrary library, FactTaker taker, Assess assess)
    {
        (this.library, this.taker, this.assess) = (library, taker, assess);
        (verdicts, cautions, asker, closing) = (new(book, assess), new(book), new(book), new(book, library.Opening));
        (judgements, arrival, Switch, Stand) = (new(book, cautions), new(book, cautions), new(library), new(library, assess));
        Steps = new(Stand, Switch, verdicts, closing, assess);
    }

    public WalkStand Stand { get; }

    public WalkSwitch Switch { get; }

    public StepTaker Steps { get; }

    /// <summary>Brings the walk up to what the turn changed and closes the turn with the reply.</summary>
    /// <param name="assessment">What the rules make of the facts now, where the turn has asked them already.</param>
    public Turn Finish(TurnDraft draft, Assessment? assessment)
    {
        var judged = assessment ?? assess(draft.State.Facts);
        for (var round = 0; ; round++)
        {
            var machine = library.Machine(draft.State.Walk);
            var view = new WalkView(machine.Walk, draft.State, judged, draft.At);
            if (draft.State.Outcome is not null)
            {
                return Reply(draft, view, Stand.Stop(draft.State));
            }

            var here = machine.Locate(view);
            view = Pass(draft, here, view);
            judged = view.Assessment;

            // In the room the next question is nearer than a guess; once something was read at the unit, a likely fault is news.
            verdicts.Tell(draft, judged, view.Leader, isLikelyNews: here.Stop.Kind is StopKind.Proves or StopKind.Acts || view.WasAt(Place.Unit));
            if (here.Stop is { Kind: StopKind.Ends, Closes: true })
            {
                closing.Close(draft, view.Leader);
            }
            else if (round < MostRounds && MovedOn(draft, here, view))
            {
                continue;
            }

            if (draft.State.Offered is null)
            {
                arrival.Reach(draft, here.Stop, here.Place, view);
            }

            return Reply(draft, view with { Visit = draft.State }, here.Stop);
        }
    }

    /// <summary>Says what the way to here brought: judgements first, then what the ways taken say.</summary>
    private WalkView Pass(TurnDraft draft, WalkOutcome here, WalkView view)
    {
        view = judgements.Tell(draft, here, view);
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

        return view;
    }

    /// <summary>Ends a walk, or goes back along it; false where it simply stands.</summary>
    private bool MovedOn(TurnDraft draft, WalkOutcome here, WalkView view)
    {
        if (here.Stop.Kind == StopKind.Ends)
        {
            Switch.Finish(draft, view.Walk, here.Stop);
            return true;
        }

        if (here.Back is { } back)
        {
            if (back.Says is { } says)
            {
                draft.Say(says);
            }

            draft.Emit(new StopsReopened(view.Walk.Name, view.Walk.Onward(back.Go)) { At = draft.At, By = draft.By });
            return true;
        }

        return false;
    }

    /// <summary>Someone is hurt or in danger: everything else waits.</summary>
    public Turn Emergency(TurnDraft draft)
    {
        draft.Say("emergency.stop");
        cautions.Now(draft, CautionCode.Emergency, draft.State.Place ?? Stand.Walk(draft.State).Places[0]);
        draft.Emit(new VisitPaused { At = draft.At, By = draft.By, IsEmergency = true });
        draft.Say("emergency.after");
        return Reply(draft, Stand.View(draft.State, draft.At), Stand.Stop(draft.State));
    }

    public void TellWhy(TurnDraft draft)
    {
        var state = draft.State;
        if (state.Questioned.Values.MinBy(q => q.Number) is { } questioned)
        {
            draft.Say(new Phrase(questioned.Reason, questioned.Reason));
            return;
        }

        if (DisputeSettler.Open(state) is not null)
        {
            draft.Say("differ.why");
            return;
        }

        if (state.Offered is not null)
        {
            draft.Say("why.offer");
            return;
        }

        var stop = Stand.Stop(state);
        if (RequestTaker.Due(state, stop) is { } request)
        {
            draft.Say("request.why", ("person", request.By));
            return;
        }

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

    private Turn Reply(TurnDraft draft, WalkView view, WalkStop stop)
    {
        var state = draft.State;

        // Who only watches, or left, is asked nothing.
        var isQuiet = state.Crew.Watching.ContainsKey(draft.By) || state.Crew.Gone.ContainsKey(draft.By);
        var asked = isQuiet ? Asked.Nothing : asker.For(state, stop, view.Assessment, view.Leader, Stand.Through(state));
        var reply = new Reply(
            draft.Said,
            draft.Because,
            draft.Cautions,
            asked.Ask,
            asked.Choices,
            asked.Fact?.Name,
            asked.Fact is null ? [] : [.. FactUnits.For(asked.Fact, state.Units).Select(u => u.Symbol)],
            state is { Walk: { } walk, Stop: { } name, Place: { } place } ? new(walk, name, place) : null,
            [.. view.Assessment.Findings.Where(f => f.Standing != Standing.RuledOut).Select(f => new Verdict(Codes.Of(f.Code), Codes.Of(f.Standing)))])
        {
            Parts = draft.Parts,
            AlsoWanted = StillWanted.After(view.Walk, stop, state),
        };
        return new(draft.Events, state, reply);
    }
}
