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
internal sealed class WalkGuide
{
    // More rounds than walks can end and stops can be passed anew by one message.
    private const int MostRounds = 12;

    private readonly PhraseBook book;
    private readonly WalkLibrary library;
    private readonly FactTaker taker;
    private readonly Assess assess;
    private readonly VerdictTeller verdicts;
    private readonly CautionGiver cautions;
    private readonly JudgementTeller judgements;
    private readonly Asker asker;
    private readonly Closing closing;

    public WalkGuide(PhraseBook book, WalkLibrary library, FactTaker taker, Assess assess)
    {
        (this.book, this.library, this.taker, this.assess) = (book, library, taker, assess);
        (verdicts, cautions, asker, closing, Switch) = (new(book), new(book), new(book), new(book, library.Opening), new(library));
        judgements = new(book, cautions);
    }

    public WalkSwitch Switch { get; }

    public WalkDefinition Walk(VisitState state) => library.Machine(state.Walk).Walk;

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
                return Reply(draft, view, Stop(draft.State));
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
                GoTo(draft, here.Stop, here.Place, view);
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
        cautions.Now(draft, CautionCode.Emergency, draft.State.Place ?? Walk(draft.State).Places[0]);
        draft.Emit(new VisitPaused { At = draft.At, By = draft.By });
        draft.Say("emergency.after");
        return Reply(draft, View(draft.State, draft.At), Stop(draft.State));
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

        while (stop.Kind == StopKind.Confirms || (stop is { Kind: StopKind.Asks, Repeats: false } && state.Facts.Has(stop.Asks!)))
        {
            if (stop.Next[^1].IsBack)
            {
                return null;
            }

            stop = Walk(state).Stop(stop.Next[^1].Go);
        }

        return stop.Asks;
    }

    public Finding? Leader(VisitState state) => View(state, default).Leader;

    /// <summary>The walk that can be gone instead of the bare repair the visit stands at, or null.</summary>
    public string? Through(VisitState state) =>
        Stop(state).Kind == StopKind.Acts && Leader(state) is { } leader ? WalkSwitch.Through(state, Walk(state).Action(leader.Code)) : null;

    /// <summary>Takes an option of the stop that chooses; false where the message names none.</summary>
    /// <param name="isWhole">True to take the whole message only.</param>
    public bool Choose(TurnDraft draft, string plain, Func<string, string> also, bool isWhole)
    {
        var stop = Stop(draft.State);
        if (stop.Choice is not { } choice || (choice.Find(plain, isWhole) ?? choice.Find(also(plain), isWhole: true)) is not { } option)
        {
            return false;
        }

        draft.Emit(new StopChosen(Walk(draft.State).Name, stop.Name, choice.Name, option) { At = draft.At, By = draft.By });
        draft.Say("taken.chosen", ("option", option));
        return true;
    }

    /// <summary>The title of the walk under way, then of those left for it.</summary>
    public IReadOnlyList<string> Titles(VisitState state) =>
        [Walk(state).Title, .. state.Runs.Left.Select(r => library.Machine(r.Walk).Walk.Title)];

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

        if (state.Offered is not null)
        {
            WalkSwitch.Decline(draft);
            return;
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

        draft.Emit(new StopSkipped(Walk(state).Name, stop.Name) { At = draft.At, By = draft.By });
    }

    /// <summary>"done": at a step it is confirmed, at a repair the fault is put right; anywhere else a walk begun from another is left, and the visit ends early.</summary>
    public void Done(TurnDraft draft)
    {
        var stop = Stop(draft.State);
        var leader = stop.Kind == StopKind.Confirms ? null : Leader(draft.State);
        if (stop.Kind == StopKind.Acts && leader is not null && Walk(draft.State).Action(leader.Code).Outdates is { IsEmpty: false } outdates)
        {
            draft.Emit(new FaultMended(Codes.Of(leader.Code), outdates) { At = draft.At, By = draft.By });
            Reopen(draft);
            draft.Say("taken.mended", ("fault", "fault." + Codes.Of(leader.Code)));
        }
        else if (stop.Kind is StopKind.Confirms or StopKind.Acts)
        {
            draft.Emit(new StopConfirmed(Walk(draft.State).Name, stop.Name) { At = draft.At, By = draft.By });
            draft.Say("taken.confirmed");
        }
        else if (Walk(draft.State) == library.Opening || !Switch.Leave(draft))
        {
            draft.Say("close.early");
            verdicts.TellAll(draft, assess(draft.State.Facts));
            closing.Close(draft, leader);
        }
    }

    // What was left out on the way to one fault is open again for the next.
    private void Reopen(TurnDraft draft)
    {
        foreach (var mark in draft.State.Skipped.Where(m => Walk(draft.State).Find(m.Stop) is { Kind: StopKind.Proves or StopKind.Acts }).ToList())
        {
            draft.Emit(new EventWithdrawn(mark.Number) { At = draft.At, By = draft.By });
        }
    }

    private WalkStop Stop(VisitState state) => Walk(state).Find(state.Stop ?? "") ?? Walk(state).First;

    private WalkView View(VisitState state, DateTimeOffset now) => new(Walk(state), state, assess(state.Facts), now);

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

        if (state.Place == "unit" && there == "room" && view.Walk == library.Opening && !draft.Events.Any(e => e is WalkResumed or WalkFinished or EventWithdrawn))
        {
            draft.Say("walk.back-to-room");
        }

        draft.Emit(new StopReached(view.Walk.Name, stop.Name, there) { At = draft.At, By = draft.By, About = about });
        var action = stop.Kind == StopKind.Acts && view.Leader is not null ? view.Walk.Action(view.Leader.Code) : null;
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
        var asked = asker.For(state, stop, view.Assessment, view.Leader, Through(state));
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
