using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Turns;

/// <summary>
/// What the next person is told: where, what is known, the verdict and how sure it is, what was done, what is open. The next
/// question follows as after every turn. Never more than <see cref="MostLines"/> lines.
/// </summary>
internal sealed class HandoverTeller(PhraseBook book)
{
    /// <summary>With the sentence before and the question after, under 12.</summary>
    public const int MostLines = 9;

    // Read off in this order: what is asked about a warm room first.
    private static readonly Fact[] Telling =
    [
        FactCatalogue.Refrigerant, FactCatalogue.BoxTemperature, FactCatalogue.SuctionPressure, FactCatalogue.DischargePressure, FactCatalogue.SightGlass, FactCatalogue.AmbientTemperature,
    ];

    /// <summary>The state of the visit, a line each; in brief the verdict and what is open.</summary>
    public Phrase Tell(VisitState state, Finding? leader)
    {
        var verdict = Verdict(state, leader);
        var open = Open(state).ToList();
        List<Phrase> lines = [Where(state), .. Emergency(state), Known(state), verdict, .. Done(state), .. Leaks(state), .. Cylinders(state), .. open];
        return new(string.Join('\n', lines.Take(MostLines).Select(l => l.Full)), string.Join(' ', Emergency(state).Append(verdict).Concat(open).Select(l => l.Brief)));
    }

    /// <summary>How the visit before left the equipment, for the opening of the next one; empty where there was none.</summary>
    public IEnumerable<Phrase> Before(VisitState state)
    {
        if (state.Before is not { } before)
        {
            yield break;
        }

        yield return before is { Fault: { } fault, Standing: { } standing } && fault != Codes.Of(FaultCode.NotEnoughEvidence)
            ? Say(state, "handover.before", ("date", Day(before.On)), ("standing", standing), ("fault", "fault." + fault))
            : Say(state, "handover.before-nothing", ("date", Day(before.On)));
        if (!before.Mended.IsEmpty)
        {
            yield return Say(state, "handover.mended", ("faults", Faults(before.Mended)));
        }

        if (!before.FollowUps.IsEmpty)
        {
            yield return Say(state, "handover.open-until", ("date", Day(before.FollowUps.Min())));
        }

        foreach (var twice in before.Leaks.Where((l, i) => before.Leaks.Take(i).Any(e => LeakTaker.IsSame(e.Place, l.Place))).TakeLast(1))
        {
            yield return Say(state, "leak.twice", ("place", twice.Place), ("date", Day(twice.On)));
        }
    }

    private Phrase Where(VisitState state) => state.Unit is { } unit
        ? Say(state, "handover.where-unit", ("site", state.Site ?? ""), ("unit", unit))
        : Say(state, "handover.where", ("site", state.Site ?? ""));

    private IEnumerable<Phrase> Emergency(VisitState state) =>
        EmergencyTeller.Key(state) is { } emergency ? [Say(state, emergency, EmergencyTeller.Parts(state))] : [];

    private Phrase Known(VisitState state)
    {
        var known = Telling.Select(state.Facts.Find).OfType<FactValue>().Select(v => $"{book.Word(v.Fact.Name)} {book.Word(FactText.Of(v))}").ToList();
        return known.Count == 0
            ? Say(state, "handover.known-nothing")
            : Say(state, "handover.known", ("count", state.Facts.Values.Count().ToString(CultureInfo.InvariantCulture)), ("list", string.Join(", ", known)));
    }

    private Phrase Verdict(VisitState state, Finding? leader) => leader is null
        ? state.UnderRepair is { } repaired ? Say(state, "verdict.in-repair", ("fault", "fault." + repaired)) : Say(state, "verdict.nothing")
        : Say(state, "command.status-leading", ("standing", Codes.Of(leader.Standing)), ("fault", "fault." + Codes.Of(leader.Code)));

    private IEnumerable<Phrase> Done(VisitState state) => state.Mended.IsEmpty
        ? [Say(state, "handover.mended-nothing")]
        : [Say(state, "handover.mended", ("faults", Faults(state.Mended.Select(m => m.Fault))))];

    private IEnumerable<Phrase> Leaks(VisitState state) => state.Leaks.IsEmpty
        ? []
        : [Say(state, "handover.leaks", ("places", string.Join("; ", state.Leaks.Select(l => l.Place).Distinct())))];

    // All accounts in one line.
    private IEnumerable<Phrase> Cylinders(VisitState state)
    {
        var accounts = new CylinderTeller(book).Tell(state).ToList();
        return accounts.Count == 0 ? [] : [accounts.Aggregate((all, next) => all.Then(next))];
    }

    private IEnumerable<Phrase> Open(VisitState state)
    {
        foreach (var questioned in state.Questioned.Values.Take(1))
        {
            yield return Say(state, "command.status-questioned", ("fact", questioned.Value.Fact.Name), ("value", FactText.Of(questioned.Value)));
        }

        if (state.Skipped.Count() is > 0 and var skipped)
        {
            yield return Say(state, "handover.skipped", ("count", skipped.ToString(CultureInfo.InvariantCulture)));
        }

        if (!state.FollowUps.IsEmpty)
        {
            yield return Say(state, "handover.follow-ups", ("list", string.Join("; ", state.FollowUps.Select(f => $"{f.What} ({Day(f.Due)})"))));
        }
    }

    private string Faults(IEnumerable<string> codes) => string.Join("; ", codes.Distinct().Select(c => book.Word("fault." + c)));

    private Phrase Say(VisitState state, string key, params ReadOnlySpan<ReasonPart> parts) => book.Say(key, state.Units, parts);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
