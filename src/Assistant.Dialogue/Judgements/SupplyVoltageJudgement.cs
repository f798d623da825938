using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Judgements;

/// <summary>
/// Whether the voltage between two legs belongs to a usual supply: within a tenth (common practice, and IEC 60038) of a nominal voltage of
/// ANSI C84.1 or IEC 60038. Under 50 V a.c., the limit of touch voltage in IEC 60364-4-41, nothing feeds the unit. The plate decides.
/// </summary>
internal sealed record SupplyVoltageJudgement() : Judgement("supply-voltage", ["usual", "between", "off"], [FactCatalogue.SupplyVoltage])
{
    private const double Off = 50;

    private const double Tenth = 0.1;

    private static readonly double[] NominalVolts = [120, 208, 230, 240, 400, 480, 600, 690];

    public override Judged Judge(JudgementView view)
    {
        var volts = view.Facts.Quantity(FactCatalogue.SupplyVoltage, Dimension.Voltage) ?? 0;
        var nearest = NominalVolts.MinBy(n => Math.Abs(volts - n));
        var outcome = volts < Off ? "off" : Math.Abs(volts - nearest) <= nearest * Tenth ? "usual" : "between";
        return new(outcome, ("volts", new Amount(volts, Dimension.Voltage)), ("nominal", new Amount(nearest, Dimension.Voltage)));
    }
}
