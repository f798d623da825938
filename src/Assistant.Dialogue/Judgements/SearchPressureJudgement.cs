using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether the nitrogen stands high enough to find a leak and not over the low side's design pressure on the nameplate (ASHRAE 15, EN 378-2, from memory).</summary>
internal sealed record SearchPressureJudgement() : Judgement(
    "search-pressure", ["set", "over-limit", "too-low", "no-limit"], [FactCatalogue.TestPressure, FactCatalogue.LowSideDesignPressure])
{
    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        var pressure = facts.Pressure(FactCatalogue.TestPressure)?.ToGauge(facts.Barometer) ?? new(0);
        if (facts.Pressure(FactCatalogue.LowSideDesignPressure)?.ToGauge(facts.Barometer) is not { } limit)
        {
            return new("no-limit", ("pressure", pressure));
        }

        var outcome = pressure.Pascals > limit.Pascals ? "over-limit" : pressure.Pascals < LeakSearch.LeastPressure.Pascals ? "too-low" : "set";
        return new(outcome, ("pressure", pressure), ("limit", limit), ("least", LeakSearch.LeastPressure))
        {
            Cautions = outcome is "over-limit" or "too-low" ? [CautionCode.Nitrogen] : [],
        };
    }
}
