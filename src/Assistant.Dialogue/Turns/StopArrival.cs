using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Turns;

/// <summary>Comes to a stop: notes it, gives its cautions and sets its reminder.</summary>
internal sealed class StopArrival(PhraseBook book, CautionGiver cautions)
{
    public void Reach(TurnDraft draft, WalkStop stop, string place, WalkView view)
    {
        var state = draft.State;
        var fact = stop.Kind == StopKind.Proves ? view.Assessment.Next : stop.Asks;
        var inHand = FaultInHand.At(state, stop, view.Leader);
        var about = inHand is { } fault ? Codes.Of(fault) : fact?.Name;

        // A stop without a place is taken where the technician is, unless the fact it wants is elsewhere.
        var there = stop.Place ?? PlaceOf(fact) ?? state.Place ?? place;
        if (state.Stop == stop.Name && state.About == about && state.Place == there && view.Run.Reached(stop.Name) is not null)
        {
            GiveOpen(draft, view, there);
            return;
        }

        if (state.Place == "unit" && there == "room" && stop.Kind == StopKind.Proves)
        {
            draft.Say("walk.back-to-room");
        }

        draft.Emit(new StopReached(view.Walk.Name, stop.Name, there) { At = draft.At, By = draft.By, About = about });
        var action = inHand is { } acted ? view.Walk.Action(acted) : null;
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
            var what = action is null ? What(stop, view.Walk) : book.Word("fault." + about);
            draft.Emit(new ReminderSet(draft.At + remind, book.Say("remind.stop", state.Units, ("stop", what)).Full) { At = draft.At, By = draft.By });
            draft.Say("walk.remind", ("time", new Amount(remind.TotalSeconds, Dimension.Time)));
        }
    }

    private void GiveOpen(TurnDraft draft, WalkView view, string place)
    {
        var isTold = view.Leader is { } leader && draft.State.LastVerdict?.Fault == Codes.Of(leader.Code);
        cautions.Open(draft, view.Assessment.Cautions, place, isTold);
    }

    // "fact.pull-down" or "word.isolate" names a stop that asks for no fact; the walk's title does otherwise.
    private string What(WalkStop stop, WalkDefinition walk) =>
        stop.Asks is { } fact ? book.Word(fact.Name) : book.Has("fact." + stop.Name) || book.Has("word." + stop.Name) ? book.Word(stop.Name) : walk.Title;

    private static string? PlaceOf(Fact? fact) => fact?.Place switch
    {
        Place.Room => "room",
        Place.Unit => "unit",
        _ => null,
    };
}
