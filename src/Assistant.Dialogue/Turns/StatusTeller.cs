using Assistant.Dialogue.Replies;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>"status" and "report": where the visit stands, and what it holds.</summary>
internal sealed class StatusTeller(PhraseBook book)
{
    private readonly CylinderTeller cylinders = new(book);

    /// <param name="walks">The walk under way first, then those left for it.</param>
    public void Status(TurnDraft draft, Finding? leader, IReadOnlyList<string> walks)
    {
        var state = draft.State;
        if (EmergencyTeller.Key(state) is { } emergency)
        {
            draft.Say(emergency, EmergencyTeller.Parts(state));
        }

        draft.Say("command.status-walk", ("walk", walks[0]));
        if (walks.Count > 1)
        {
            draft.Say("command.status-left", ("walks", string.Join(", ", walks.Skip(1))));
        }

        draft.Say("command.status", ("count", Count(state.Facts.Values)), ("skipped", Count(state.Skipped)));
        if (leader is null && state.UnderRepair is { } repaired)
        {
            draft.Say("verdict.in-repair", ("fault", "fault." + repaired));
        }
        else if (leader is null)
        {
            draft.Say("verdict.nothing");
        }
        else
        {
            draft.Say("command.status-leading", ("standing", Codes.Of(leader.Standing)), ("fault", "fault." + Codes.Of(leader.Code)));
        }

        foreach (var line in cylinders.Tell(state))
        {
            draft.Say(line);
        }

        foreach (var questioned in state.Questioned.Values)
        {
            draft.Say("command.status-questioned", ("fact", questioned.Value.Fact.Name), ("value", FactText.Of(questioned.Value)));
        }
    }

    public void Report(TurnDraft draft)
    {
        var state = draft.State;
        if (!state.Facts.Values.Any())
        {
            draft.Say("command.report-empty");
            return;
        }

        var values = FactCatalogue.All.Select(state.Facts.Find).OfType<FactValue>();
        var list = string.Join(", ", values.Select(v => $"{book.Word(v.Fact.Name)} {book.Word(FactText.Of(v))}"));
        draft.Say("command.report", ("list", list));
        foreach (var line in cylinders.Tell(state))
        {
            draft.Say(line);
        }
    }

    private static string Count<T>(IEnumerable<T> items) => items.Count().ToString(System.Globalization.CultureInfo.InvariantCulture);
}
