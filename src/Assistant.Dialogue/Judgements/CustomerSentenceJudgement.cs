using System.Collections.Frozen;
using System.Globalization;
using Assistant.Trade;
using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Judgements;

/// <summary>What the customer is told, in one sentence without the trade's words, and what is to be done by when.</summary>
internal sealed record CustomerSentenceJudgement() : Judgement("customer-sentence", ["mended-cold", "mended", "open", "nothing"], [FactCatalogue.BoxTemperature, FactCatalogue.Setpoint])
{
    // A verdict that names no trouble is no trouble found.
    private static readonly FrozenSet<string> Unfound = FrozenSet.Create(Codes.Of(FaultCode.NotEnoughEvidence), Codes.Of(FaultCode.NoFault));

    public override Judged Judge(JudgementView view)
    {
        var state = view.Visit;
        var fault = !state.Mended.IsEmpty ? state.Mended[^1].Fault : state.LastVerdict?.Fault is { } told && !Unfound.Contains(told) ? told : null;
        var box = view.Facts.Temperature(FactCatalogue.BoxTemperature);
        var isCold = box is { } now && view.Facts.Temperature(FactCatalogue.Setpoint) is { } setpoint && !Rounding.IsOver(now, setpoint);
        var because = state.FollowUps
            .OrderBy(f => f.Due)
            .Select(f => new Reason("judged.customer.follow-up", ("date", f.Due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), ("what", f.What)))
            .DefaultIfEmpty(new Reason("judged.customer.no-follow-up"));
        var parts = new List<ReasonPart>();
        if (fault is not null)
        {
            parts.Add(("fault", "fault." + fault));
        }

        if (box is { } room)
        {
            parts.Add(("box", room));
        }

        var outcome = fault is null || box is null ? "nothing" : state.Mended.IsEmpty ? "open" : isCold ? "mended-cold" : "mended";
        return new(outcome, [.. parts]) { Because = [.. because] };
    }
}
