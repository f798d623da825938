using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Turns;

/// <summary>Opens a visit: takes what the record knows, greets, tells what was left from before, and asks the first thing.</summary>
internal sealed class Opening(PhraseBook book, Understand understand, WalkGuide guide)
{
    private readonly HandoverTeller handover = new(book);
    private readonly RecordTeller record = new(book);

    public Turn Open(VisitOpened opened)
    {
        var draft = new TurnDraft(book, VisitState.Empty, opened.By, opened.At);
        draft.Emit(opened);
        foreach (var (name, text) in opened.KnownFacts.OrderBy(k => k.Key, StringComparer.Ordinal))
        {
            if (FactCatalogue.Find(name) is { } fact && Known(fact, text, draft.State) is { } value)
            {
                draft.Emit(FactTaker.Event(value, "record", null, opened.At, opened.By));
            }
        }

        draft.Emit(new WalkStarted(WalkLibrary.OpeningWalk) { At = opened.At, By = opened.By });
        Greet(draft);
        foreach (var line in record.Tell(opened, draft.State))
        {
            draft.Say(line);
        }

        foreach (var line in handover.Before(draft.State))
        {
            draft.Say(line);
        }

        return guide.Finish(draft, null);
    }

    /// <summary>Says where one is, and the refrigerant where it is known.</summary>
    public static void Greet(TurnDraft draft)
    {
        var state = draft.State;
        if (state.Site is not { Length: > 0 } site)
        {
            draft.Say("open.nowhere");
        }
        else if (state.Facts.Word(FactCatalogue.Refrigerant) is { } refrigerant)
        {
            // What was typed as the visit was opened comes from no record.
            draft.Say(state.Before is null ? "open.told" : "open.known", ("site", site), ("refrigerant", refrigerant));
        }
        else
        {
            draft.Say("open.site", ("site", site));
        }
    }

    private FactValue? Known(Fact fact, string text, VisitState state)
    {
        // As a record writes it: the number and the unit's own symbol ("0.21 ft3").
        if (text.Split(' ', 2) is [var number, var symbol] && double.TryParse(number, System.Globalization.CultureInfo.InvariantCulture, out var value) && FactUnits.Find(fact, symbol) is { } unit)
        {
            return new Reading(fact, value, unit);
        }

        var understood = understand(text, new(fact, state.Units));
        return (FactValue?)understood.Readings.FirstOrDefault(r => r.Fact == fact) ?? understood.Observations.FirstOrDefault(o => o.Fact == fact);
    }
}
