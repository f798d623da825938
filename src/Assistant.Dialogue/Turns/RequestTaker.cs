using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// What one person asks another to read: noted, asked of whoever stands where it is read before the walk goes on, and told to the one who
/// asked, whatever channel each speaks by.
/// </summary>
internal static class RequestTaker
{
    /// <summary>Notes what is asked for, or takes it back.</summary>
    public static void Take(TurnDraft draft, RequestSaid said)
    {
        if (said.Facts.IsEmpty)
        {
            draft.Say("request.unknown", ("what", said.Words));
            return;
        }

        foreach (var fact in said.Facts)
        {
            if (said.IsDropped)
            {
                Drop(draft, fact);
            }
            else
            {
                Ask(draft, fact);
            }
        }
    }

    /// <summary>Tells the speaker what became of what they asked for, once.</summary>
    public static void Tell(TurnDraft draft)
    {
        foreach (var request in draft.State.Requests.ToTell(draft.By).ToList())
        {
            if (request.AnsweredBy is { } number && draft.State.History.GetValueOrDefault(request.Fact, []).Find(t => t.Number == number) is { Value: { } value } taken)
            {
                draft.Say("told.answered", ("fact", request.Fact.Name), ("value", FactText.Of(value)), ("person", taken.By));
            }
            else
            {
                draft.Say("told.not-had", ("fact", request.Fact.Name), ("person", request.DroppedBy ?? ""));
            }

            draft.Emit(new RequestTold(request.Number) { At = draft.At, By = draft.By });
        }
    }

    /// <summary>What is asked for where the visit stands, before the stop's own question; null where something else is open, or the stop waits for a word.</summary>
    public static ReadingRequest? Due(VisitState state, WalkStop stop) =>
        stop.Kind is StopKind.Asks or StopKind.Proves or StopKind.Judges ? Waiting(state) : null;

    /// <summary>What is asked for where the visit stands and said beside the stop's own question, as that waits for a word; or null.</summary>
    public static ReadingRequest? Beside(VisitState state, WalkStop stop) =>
        stop.Kind is StopKind.Confirms or StopKind.Acts or StopKind.Chooses ? Waiting(state) : null;

    /// <summary>The question for it: by whom it is asked, or plainly to who is alone on the visit and asked for it themselves.</summary>
    public static Asked Plainly(PhraseBook book, VisitState state, ReadingRequest request) => VisitCrew.Of(state) is [var alone] && alone.Name == request.By
        ? new(book.Say("ask." + request.Fact.Name, state.Units), request.Fact.Choices, request.Fact)
        : Question(book, state, request);

    /// <summary>The question for it, by whom it is asked.</summary>
    /// <param name="key">The phrase that puts the two together; a voice takes what is asked beside a step only after it.</param>
    public static Asked Question(PhraseBook book, VisitState state, ReadingRequest request, string key = "request.ask")
    {
        var ask = book.Say("ask." + request.Fact.Name, state.Units);
        Phrase Of(string question) => book.Say(key, state.Units, ("person", request.By), ("question", question));
        var aloud = Of(ask.Aloud);
        return new(new(Of(ask.Full).Full, Of(ask.Brief).Brief) { Spoken = ask.Spoken is null && aloud.Spoken is null ? null : aloud.Aloud }, request.Fact.Choices, request.Fact);
    }

    /// <summary>"skip" at what was asked for: it can not be had; false where nothing was.</summary>
    public static bool Skip(TurnDraft draft, WalkStop stop)
    {
        if (Due(draft.State, stop) is not { } request)
        {
            return false;
        }

        draft.Emit(new RequestDropped(request.Number) { At = draft.At, By = draft.By });
        draft.Say("request.left-out", ("fact", request.Fact.Name), ("person", request.By));
        return true;
    }

    private static ReadingRequest? Waiting(VisitState state) =>
        state is { Outcome: null, IsPaused: false, Clarification: null, Offered: null, Cylinders.Asks: null, Questioned.IsEmpty: true, Disputes.IsEmpty: true }
            ? state.Requests.At(state.Place).FirstOrDefault()
            : null;

    private static void Ask(TurnDraft draft, Fact fact)
    {
        if (draft.State.Requests.All.Any(r => r.IsOpen && r.Fact == fact && r.By == draft.By))
        {
            draft.Say("request.already", ("fact", fact.Name));
            return;
        }

        if (draft.State.History.GetValueOrDefault(fact, []) is [.., { Value: { } value } last])
        {
            draft.Say("request.known", ("fact", fact.Name), ("value", FactText.Of(value)), ("person", last.By));
        }

        draft.Emit(new ReadingRequested(fact.Name) { At = draft.At, By = draft.By });
        var isHere = draft.State.Requests.At(draft.State.Place).Any(r => r.Fact == fact);
        draft.Say(isHere ? "request.noted" : "request.queued", ("fact", fact.Name), ("place", "at-" + fact.Place.ToString().ToLowerInvariant()));
    }

    // Their own first; else whoever's it is.
    private static void Drop(TurnDraft draft, Fact fact)
    {
        var open = draft.State.Requests.All.Where(r => r.IsOpen && r.Fact == fact).ToList();
        if (open.Count == 0)
        {
            draft.Say("request.none", ("fact", fact.Name));
            return;
        }

        var own = open.Where(r => r.By == draft.By).ToList();
        foreach (var request in own.Count > 0 ? own : open)
        {
            draft.Emit(new RequestDropped(request.Number) { At = draft.At, By = draft.By });
        }

        draft.Say("request.dropped", ("fact", fact.Name));
    }
}
