using System.Collections.Immutable;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules;
using Assistant.Trade.Sums;

namespace Assistant.Dialogue.Judgements;

/// <summary>The last readings against what the plant should show: condenser split by the plate or as usual, superheat at the compressor and at the bulb. Common practice but for the plate.</summary>
internal sealed record FinalReadingsJudgement() : Judgement(
    "final-readings",
    ["on-target", "off-target", "unknown"],
    [
        FactCatalogue.SuctionPressure, FactCatalogue.DischargePressure, FactCatalogue.AmbientTemperature, FactCatalogue.SuctionLineTemperatureAtCompressor,
        FactCatalogue.DesignCondenserSplit, FactCatalogue.HeadPressureControl, FactCatalogue.HeadPressureControlSetting, FactCatalogue.SaturationBasis, FactCatalogue.Refrigerant,
    ])
{
    // Over the plate by more than this it works harder than it was built for.
    private static readonly TemperatureDifference Margin = TemperatureDifference.FromFahrenheitDegrees(5);

    public override Judged Judge(JudgementView view)
    {
        if (RefrigerantLibrary.Find(view.Facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant)
        {
            return new("unknown");
        }

        ImmutableArray<(bool IsOff, Reason Says)> found = [.. Split(view.Facts, refrigerant), .. AtCompressor(view.Facts, refrigerant)];
        return found.IsEmpty
            ? new("unknown")
            : new(found.Any(f => f.IsOff) ? "off-target" : "on-target") { Because = [.. found.OrderByDescending(f => f.IsOff).Select(f => f.Says)] };
    }

    private static IEnumerable<(bool, Reason)> Split(FactSet facts, Refrigerant refrigerant)
    {
        if (facts.Pressure(FactCatalogue.DischargePressure) is not { } head || facts.Temperature(FactCatalogue.AmbientTemperature) is not { } ambient
            || !refrigerant.Saturation.TryDewTemperature(head, out var condensing))
        {
            yield break;
        }

        TemperatureDifference most = new((facts.Difference(FactCatalogue.DesignCondenserSplit) ?? CondenserSplit.Usual.High).Kelvins + Margin.Kelvins);

        // A head that its control holds up is wide over a cold day by design.
        var isHeld = HeldHead.Of(facts, refrigerant) is { } held && condensing < held + Margin;
        var split = condensing - ambient;
        var isOff = !isHeld && Rounding.IsOver(split, most);
        yield return (isOff, new(isOff ? "judged.final.split-wide" : isHeld ? "judged.final.head-held" : "judged.final.split", ("split", split), ("most", most), ("head", head.ToGauge(facts.Barometer))));
    }

    private static IEnumerable<(bool, Reason)> AtCompressor(FactSet facts, Refrigerant refrigerant)
    {
        if (facts.Pressure(FactCatalogue.SuctionPressure) is not { } suction || facts.Temperature(FactCatalogue.SuctionLineTemperatureAtCompressor) is not { } line
            || Superheat.Of(line, suction, refrigerant) is not { } superheat)
        {
            yield break;
        }

        var isOff = Rounding.IsUnder(superheat, SuperheatTarget.LeastAtCompressor);
        yield return (isOff, new(isOff ? "judged.final.superheat-low" : "judged.final.superheat", ("superheat", superheat), ("least", SuperheatTarget.LeastAtCompressor)));
    }
}
