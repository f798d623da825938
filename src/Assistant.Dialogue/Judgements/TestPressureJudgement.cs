using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether a nitrogen pressure may stand: never above the low side's design pressure on the nameplate (ASHRAE 15, EN 378-2; from
/// memory), and enough to show a leak.
/// </summary>
internal sealed record TestPressureJudgement() : Judgement(
    "test-pressure",
    ["within", "over-limit", "low", "no-limit"],
    [FactCatalogue.TestPressure, FactCatalogue.LowSideDesignPressure])
{
    // Under half the limit a small leak takes too long to show. Common practice.
    private const double Enough = 0.5;

    public override Judged Judge(JudgementView view)
    {
        if (view.Facts.Pressure(FactCatalogue.TestPressure) is not { } pressure)
        {
            return new("low", ("set", new GaugePressure(0)), ("limit", new GaugePressure(0)));
        }

        var set = pressure.ToGauge(view.Facts.Barometer);
        if (view.Facts.Pressure(FactCatalogue.LowSideDesignPressure)?.ToGauge(view.Facts.Barometer) is not { } limit)
        {
            return new("no-limit", ("set", set));
        }

        var outcome = set.Pascals > limit.Pascals ? "over-limit" : set.Pascals < limit.Pascals * Enough ? "low" : "within";
        return new(outcome, ("set", set), ("limit", limit)) { Cautions = outcome == "over-limit" ? [CautionCode.Nitrogen] : [] };
    }
}
