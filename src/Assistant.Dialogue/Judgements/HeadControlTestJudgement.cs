using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>Whether the head pressure control holds what it is set to: told only below the ambient at which the head would fall by itself (<see cref="MinimumAmbient"/>).</summary>
internal sealed record HeadControlTestJudgement() : Judgement(
    "head-control-test",
    ["holds", "low", "high", "too-warm", "unknown"],
    [
        FactCatalogue.HeadPressureControl, FactCatalogue.HeadPressureControlSetting, FactCatalogue.SaturationBasis, FactCatalogue.AmbientTemperature,
        FactCatalogue.DischargePressure, FactCatalogue.DesignCondenserSplit, FactCatalogue.Refrigerant,
    ])
{
    // A gauge, a chart and a valve together: within 3 degF of saturation it holds. Common practice.
    private static readonly TemperatureDifference Close = TemperatureDifference.FromFahrenheitDegrees(3);

    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        if (RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant
            || HeldHead.Of(facts, refrigerant) is not { } held
            || !refrigerant.Saturation.TryDewPressure(held, out var setting)
            || facts.Pressure(FactCatalogue.DischargePressure) is not { } head
            || !refrigerant.Saturation.TryDewTemperature(head, out var condensing)
            || facts.Temperature(FactCatalogue.AmbientTemperature) is not { } ambient)
        {
            return new("unknown");
        }

        var split = facts.Difference(FactCatalogue.DesignCondenserSplit) ?? new((CondenserSplit.Usual.Low.Kelvins + CondenserSplit.Usual.High.Kelvins) / 2);
        var outcome = Rounding.IsUnder(condensing, held - Close) ? "low"
            : !Rounding.IsUnder(ambient, held - split) ? condensing > ambient + split + Close ? "high" : "too-warm"
            : condensing > held + Close ? "high"
            : "holds";
        return new(outcome, ("head", head.ToGauge(facts.Barometer)), ("setting", setting.ToGauge(facts.Barometer)), ("ambient", ambient));
    }
}
