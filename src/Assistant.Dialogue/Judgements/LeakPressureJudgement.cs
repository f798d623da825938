using Assistant.Trade.Facts;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether the pressure at rest is enough to find a leak with what is in the system (<see cref="LeakSearch"/>).</summary>
internal sealed record LeakPressureJudgement() : Judgement(
    "leak-pressure", ["enough", "too-low", "empty"], [FactCatalogue.StandingPressure, FactCatalogue.AmbientTemperature, FactCatalogue.Refrigerant])
{
    public override Judged Judge(JudgementView view)
    {
        var pressure = view.Facts.Pressure(FactCatalogue.StandingPressure)?.ToGauge(view.Facts.Barometer) ?? new(0);
        var outcome = pressure.Pascals < LeakSearch.Empty.Pascals ? "empty" : pressure.Pascals < LeakSearch.LeastPressure.Pascals ? "too-low" : "enough";
        return new(outcome, ("pressure", pressure), ("least", LeakSearch.LeastPressure)) { Because = [.. Liquid(view.Facts)] };
    }

    // What it would stand at with liquid left: the bubble point of the coldest liquid, here at the outside temperature.
    private static IEnumerable<Reason> Liquid(FactSet facts)
    {
        if (RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is { } refrigerant
            && facts.Temperature(FactCatalogue.AmbientTemperature) is { } outside
            && refrigerant.Saturation.TryBubblePressure(outside, out var saturation))
        {
            yield return new("judged.leak-pressure.liquid", ("refrigerant", refrigerant.Designation), ("outside", outside), ("saturation", saturation.ToGauge(facts.Barometer)));
        }
    }
}
