using Assistant.Trade.Facts;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether setpoint and differential suit what is stored (<see cref="StoredGoods"/>).</summary>
internal sealed record SetpointFitJudgement() : Judgement("setpoint-fit", ["fits", "too-warm", "too-cold", "unknown"], [FactCatalogue.Setpoint, FactCatalogue.Differential])
{
    public override Judged Judge(JudgementView view)
    {
        if (view.Facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint || StoredGoods.Find(view.Visit.Chosen("stored-goods")) is not { } goods)
        {
            return new("unknown");
        }

        var outcome = Rounding.IsOver(setpoint, goods.High) ? "too-warm" : Rounding.IsUnder(setpoint, goods.Low) ? "too-cold" : "fits";
        return new(outcome, ("setpoint", setpoint), ("goods", goods.Name), ("low", goods.Low), ("high", goods.High))
        {
            Because = [.. Differential(view.Facts), new Reason("judged.setpoint.source")],
        };
    }

    private static IEnumerable<Reason> Differential(FactSet facts)
    {
        if (facts.Difference(FactCatalogue.Differential) is not { } differential || facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint)
        {
            yield break;
        }

        if (Rounding.IsOver(differential, StoredGoods.UsualDifferential.High))
        {
            yield return new("judged.setpoint.differential-wide", ("differential", differential), ("warmest", setpoint + differential));
        }
        else if (Rounding.IsUnder(differential, StoredGoods.UsualDifferential.Low))
        {
            yield return new("judged.setpoint.differential-narrow", ("differential", differential));
        }
    }
}
