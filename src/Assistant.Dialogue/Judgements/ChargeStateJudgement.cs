using Assistant.Trade.Cautions;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether the charge is right for today: a clear glass and the head at what its control holds. A flashing glass or a low head wants more,
/// until more than the plate's charge went in: then it is no charge fault, and pouring stops. Into an empty system the plate's charge goes by weight. Common practice.
/// </summary>
internal sealed record ChargeStateJudgement() : Judgement(
    "charge-state",
    ["charged", "flashing", "head-low", "short", "left-short", "over", "unknown"],
    [
        FactCatalogue.SightGlass, FactCatalogue.DischargePressure, FactCatalogue.HeadPressureControl, FactCatalogue.HeadPressureControlSetting, FactCatalogue.SaturationBasis,
        FactCatalogue.Refrigerant, FactCatalogue.FullCharge, FactCatalogue.ChargeAdded,
    ])
{
    // A gauge and a chart together: within 2 degF of saturation the head is at its setting. Common practice.
    private static readonly TemperatureDifference Close = TemperatureDifference.FromFahrenheitDegrees(2);

    // A scale and a plate agree within a twentieth.
    private const double Overcharged = 1.05;

    // Into an empty system the plate's charge goes by weight: under nine tenths of it a clear glass proves nothing. Common practice.
    private const double Short = 0.9;

    public override Judged Judge(JudgementView view)
    {
        var facts = view.Facts;
        var added = ChargeTold.Added(view);
        var full = ChargeTold.Full(view);
        if (facts.Word(FactCatalogue.SightGlass) is not { } glass)
        {
            return new("unknown");
        }

        if (full is { } plate && added > plate * Overcharged)
        {
            return new("over", ChargeTold.Part("added", added), ChargeTold.Part("full", plate)) { Cautions = [CautionCode.NoVenting] };
        }

        var parts = new List<ReasonPart> { ChargeTold.Part("added", added), ChargeTold.Part("rest", Math.Max(0, (full ?? added) - added)) };
        if (glass != "clear")
        {
            return new("flashing", [.. parts]);
        }

        if (full is { } whole && added < whole * Short && ChargeTold.IsByWeight(view) && !facts.Is(FactCatalogue.HeadPressureControl, "valve"))
        {
            parts.Add(ChargeTold.Part("full", whole));
            return new(ChargeTold.IsLeftAt(view, "short") ? "left-short" : "short", [.. parts]);
        }

        if (Head(facts) is not var (head, setting, isLow))
        {
            return new("charged", [.. parts]);
        }

        var measured = new Reason("judged.charge.head", ("head", head), ("setting", setting));
        return new(isLow ? "head-low" : "charged", [.. parts]) { Because = [measured] };
    }

    private static (Amount Head, Amount Setting, bool IsLow)? Head(FactSet facts) =>
        RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is { } refrigerant
            && HeldHead.Of(facts, refrigerant) is { } held
            && refrigerant.Saturation.TryDewPressure(held, out var setting)
            && facts.Pressure(FactCatalogue.DischargePressure) is { } head
            && refrigerant.Saturation.TryDewTemperature(head, out var condensing)
            ? (head.ToGauge(facts.Barometer), setting.ToGauge(facts.Barometer), Rounding.IsUnder(condensing, held - Close))
            : null;
}
