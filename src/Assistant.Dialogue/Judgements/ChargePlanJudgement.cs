using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// How much is to go in: after a vacuum the whole charge by weight; on top of what is still in there it is not known, and the glass and
/// the head tell. By the cylinder's account of this visit.
/// </summary>
internal sealed record ChargePlanJudgement() : Judgement("charge-plan", ["by-weight", "by-glass", "full", "unknown"], [FactCatalogue.FullCharge, FactCatalogue.ChargeAdded])
{
    public override Judged Judge(JudgementView view)
    {
        var added = ChargeTold.Added(view);
        if (ChargeTold.Full(view) is not { } full)
        {
            return new("unknown");
        }

        var parts = new[] { ChargeTold.Part("full", full), ChargeTold.Part("added", added), ChargeTold.Part("rest", Math.Max(0, full - added)) };
        return added >= full ? new("full", [.. parts]) : new(ChargeTold.IsByWeight(view) ? "by-weight" : "by-glass", [.. parts]);
    }
}
