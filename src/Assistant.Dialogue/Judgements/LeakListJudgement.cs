using System.Globalization;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>The leaks proved on this visit, in the order they were found.</summary>
internal sealed record LeakListJudgement() : Judgement("leak-list", ["proven", "none-proven"], [])
{
    public override Judged Judge(JudgementView view) => new(view.Visit.Leaks.IsEmpty ? "none-proven" : "proven")
    {
        Because = [.. view.Visit.Leaks.Select((leak, i) => new Reason("judged.leak-list.leak", ("number", (i + 1).ToString(CultureInfo.InvariantCulture)), ("place", leak.Place)))],
    };
}
