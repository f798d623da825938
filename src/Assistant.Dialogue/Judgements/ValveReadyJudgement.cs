using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether a superheat read now says anything of the valve: a clear coil, the room within 5 degF of its setpoint, a clear glass, and a
/// valve that can be turned. Common practice.
/// </summary>
internal sealed record ValveReadyJudgement() : Judgement(
    "valve-ready",
    ["ready", "iced", "starved", "box-warm", "no-adjustment", "unknown"],
    [FactCatalogue.CoilIce, FactCatalogue.SightGlass, FactCatalogue.BoxTemperature, FactCatalogue.Setpoint, FactCatalogue.MeteringDevice])
{
    private static readonly TemperatureDifference Near = TemperatureDifference.FromFahrenheitDegrees(5);

    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        if (facts.Is(FactCatalogue.MeteringDevice, "fixed"))
        {
            return new("no-adjustment");
        }

        if (facts.Word(FactCatalogue.CoilIce) is "light" or "blocked")
        {
            return new("iced");
        }

        if (facts.Word(FactCatalogue.SightGlass) is "flashing" or "empty")
        {
            return new("starved");
        }

        if (facts.Temperature(FactCatalogue.BoxTemperature) is not { } box || facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint)
        {
            return new("unknown", ("near", Near));
        }

        var outcome = Rounding.IsOver(box, setpoint + Near) ? "box-warm" : "ready";
        return new(outcome, ("box", box), ("setpoint", setpoint), ("near", Near));
    }
}
