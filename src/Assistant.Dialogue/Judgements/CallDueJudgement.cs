using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether the control should be calling at the room's temperature, and whether it is. It calls from setpoint + differential on, and rests at the setpoint.</summary>
internal sealed record CallDueJudgement() : Judgement(
    "call-due",
    ["rightly-calling", "should-call", "should-rest", "rightly-resting", "between", "unknown"],
    [FactCatalogue.BoxTemperature, FactCatalogue.Setpoint, FactCatalogue.Differential, FactCatalogue.CallingForCooling])
{
    // Two thermometers of the trade are a degree apart.
    private static readonly TemperatureDifference Instruments = TemperatureDifference.FromFahrenheitDegrees(1);

    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        if (facts.Temperature(FactCatalogue.BoxTemperature) is not { } box || facts.Temperature(FactCatalogue.Setpoint) is not { } setpoint || facts.Word(FactCatalogue.CallingForCooling) is not { } word)
        {
            return new("unknown");
        }

        var start = setpoint + (facts.Difference(FactCatalogue.Differential) ?? new(0));
        var outcome = (word, box) switch
        {
            ("yes", _) when !Rounding.IsUnder(box, start) => "rightly-calling",
            ("no", _) when Rounding.IsOver(box, start + Instruments) => "should-call",
            ("yes", _) when Rounding.IsUnder(box, setpoint - Instruments) => "should-rest",
            ("no", _) when !Rounding.IsOver(box, setpoint) => "rightly-resting",
            _ => "between",
        };
        return new(outcome, ("box", box), ("setpoint", setpoint), ("start", start));
    }
}
