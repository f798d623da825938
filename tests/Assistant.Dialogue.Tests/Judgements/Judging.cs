using System.Collections.Immutable;
using Assistant.Dialogue.Judgements;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Judgements;

/// <summary>A judgement over a few facts and choices of an invented visit.</summary>
internal static class Judging
{
    private static readonly DateTimeOffset At = new(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2));

    /// <param name="said">"setpoint = 38 degF", "hot_work_allowed = no" for a fact; "choice: repair-part = flare" for a choice; "leak: flare nut" for a leak.</param>
    public static Judged Of(string judgement, params IEnumerable<string> said)
    {
        VisitEvent opened = new VisitOpened("Invented Dairy", null, "us", ImmutableDictionary<string, string>.Empty) { At = At, By = "ada" };
        var state = VisitState.Fold([opened, new WalkStarted("w") { At = At, By = "ada" }, .. said.Select(Event)]);
        return JudgementTable.Find(judgement)!.Judge(new(state, 0, At));
    }

    public static string Reasons(Judged judged) => string.Join(' ', judged.Because.Select(r => r.Key[(r.Key.LastIndexOf('.') + 1)..]));

    public static double Number(Judged judged, string part) => judged.Parts.Single(p => p.Name == part).Amount!.Value.Canonical;

    private static VisitEvent Event(string said)
    {
        if (said.StartsWith("leak: ", StringComparison.Ordinal))
        {
            return new LeakFound(said[6..]) { At = At, By = "ada" };
        }

        var isChoice = said.StartsWith("choice: ", StringComparison.Ordinal);
        var (name, value) = (said[(isChoice ? 8 : 0)..said.IndexOf(" = ", StringComparison.Ordinal)], said[(said.IndexOf(" = ", StringComparison.Ordinal) + 3)..]);
        if (isChoice)
        {
            return new StopChosen("w", name, name, value) { At = At, By = "ada" };
        }

        return value.Split(' ', 2) is [var number, var unit]
            ? new FactTaken(name, double.Parse(number, System.Globalization.CultureInfo.InvariantCulture), unit, null, "unit", null) { At = At, By = "ada" }
            : new FactTaken(name, null, null, value, "unit", null) { At = At, By = "ada" };
    }
}
