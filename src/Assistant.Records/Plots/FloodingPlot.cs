using Assistant.Dialogue.Replies;
using Assistant.Records.Plots.Drawing;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Records.Plots;

/// <summary>How much liquid must stand in the condenser to hold a head: in today's air and in that of the coldest design day.</summary>
public static class FloodingPlot
{
    public const string Name = "flooding";
    private const int CurvePoints = 80;

    /// <summary>
    /// The plot, or null unless a valve holds the head up by flooding and refrigerant, its setting, design split, ambient, coldest design
    /// ambient and condenser volume are all known. First principles: <see cref="FloodedCondenser"/>, <see cref="WinterCharge"/>.
    /// </summary>
    public static Plot? Of(PlottedVisit visit, PhraseBook phrases)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var facts = visit.Facts;
        if (!facts.Is(FactCatalogue.HeadPressureControl, "valve")
            || RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant)) is not { } refrigerant
            || HeldHead.Of(facts, refrigerant) is not { } held
            || facts.Difference(FactCatalogue.DesignCondenserSplit) is not { } split
            || facts.Temperature(FactCatalogue.AmbientTemperature) is not { } today
            || facts.Temperature(FactCatalogue.ColdestDesignAmbient) is not { } coldest
            || facts.Quantity(FactCatalogue.CondenserVolume, Dimension.Volume) is not { } volume)
        {
            return null;
        }

        var plant = new Plant(refrigerant, held, split, today, coldest, Volume.FromCubicMeters(volume), facts.Barometer);
        var words = new PlotWords(phrases, visit.Units);
        var measured = facts.Pressure(FactCatalogue.DischargePressure) is { } head && refrigerant.Saturation.TryDewTemperature(head, out var condensing) ? condensing : (CelsiusTemperature?)null;
        return plant.At(held) is { } setting
            ? new(Name, words.Say("flooding.title"), string.Join(' ', Alt(plant, setting, measured, words)), Draw(plant, setting, measured, words))
            : null;
    }

    private static PlotDrawing Draw(Plant plant, Flooding setting, CelsiusTemperature? measured, PlotWords words)
    {
        var (pressure, mass) = words.IsUs ? (UnitOfMeasure.Psig, UnitOfMeasure.Pound) : (UnitOfMeasure.Bar, UnitOfMeasure.Kilogram);
        CelsiusTemperature[] marks = [plant.Held, .. measured is { } m ? new[] { m } : []];
        var low = marks.Append(plant.Today + plant.Split).Min() - new TemperatureDifference(6);
        var high = marks.Max() + new TemperatureDifference(8);
        var curve = Enumerable.Range(0, CurvePoints + 1).Select(i => plant.At(low + ((high - low) * ((double)i / CurvePoints)))).OfType<Flooding>().ToList();
        var frame = new PlotFrame(
            Axis.Around(words.Axis("head", pressure.Symbol), curve.Select(Head)),
            Axis.Around(words.Axis("flooded", mass.Symbol), curve.Select(f => Shown(f.Coldest)).Concat(curve.Select(f => Shown(f.Today))), fromZero: true));
        var (upright, name) = frame.Upright(Head(setting), words.Say("flooding.setting", ("head", setting.Head)));
        var empty = frame.Empty();
        var now = measured is { } read ? plant.At(read) : null;
        return new(
            [
                .. empty.Strokes, upright,
                frame.Line(Ink.Design, curve.Select(f => (Head(f), Shown(f.Coldest)))),
                frame.Line(Ink.Measured, curve.Select(f => (Head(f), Shown(f.Today)))),
            ],
            [
                frame.Dot(Head(setting), Shown(setting.Coldest), isHollow: true), frame.Dot(Head(setting), Shown(setting.Today), isHollow: true),
                .. now is null ? [] : new[] { frame.Dot(Head(now), Shown(now.Today)) },
            ],
            [.. empty.Labels, name, End(curve[^1], f => f.Coldest, plant.Coldest, "flooding.coldest", -6), End(curve[^1], f => f.Today, plant.Today, "flooding.today", 26)]);

        double Head(Flooding flooding) => pressure.FromCanonical(flooding.Head.Pascals / 1000);
        double Shown(Mass held) => mass.FromCanonical(held.Kilograms);
        Label End(Flooding last, Func<Flooding, Mass> of, CelsiusTemperature ambient, string key, double under)
        {
            var at = frame.At(Head(last), Shown(of(last)));
            return new(new(at.X, at.Y + under), words.Say(key, ("ambient", ambient)), 1, IsInside: true);
        }
    }

    private static IEnumerable<string> Alt(Plant plant, Flooding setting, CelsiusTemperature? measured, PlotWords words)
    {
        yield return words.Say(
            "flooding.needs", ("head", setting.Head), ("held", plant.Held), ("now", Weight(setting.Today)), ("today", plant.Today), ("cold", Weight(setting.Coldest)), ("coldest", plant.Coldest));
        yield return words.Say("flooding.difference", ("extra", Weight(setting.Coldest - setting.Today)), ("coldest", plant.Coldest));
        if (measured is { } read && plant.At(read) is { } now)
        {
            yield return words.Say("flooding.read", ("head", now.Head), ("now", Weight(now.Today)));
        }

        yield return words.Say("flooding.assumes");
    }

    private static Amount Weight(Mass mass) => new(mass.Kilograms, Dimension.Mass);

    /// <summary>The liquid in the condenser at one head.</summary>
    private sealed record Flooding(GaugePressure Head, Mass Today, Mass Coldest);

    private sealed record Plant(
        Refrigerant Refrigerant, CelsiusTemperature Held, TemperatureDifference Split, CelsiusTemperature Today, CelsiusTemperature Coldest, Volume Condenser, AbsolutePressure Barometer)
    {
        /// <summary>What stands in the condenser when it condenses at that temperature; null outside the table.</summary>
        public Flooding? At(CelsiusTemperature condensing)
        {
            // Against an ambient at which nothing is flooded, the winter amount is all of it.
            if (!Refrigerant.Saturation.TryDewPressure(condensing, out var pressure)
                || WinterCharge.Of(Refrigerant, condensing, Split, condensing, Coldest, Condenser) is not { } all)
            {
                return null;
            }

            var share = FloodedCondenser.Fraction(condensing, Split, Today);
            return new(pressure.ToGauge(Barometer), all.FloodedColdest > 0 ? all.Extra * (share / all.FloodedColdest) : Mass.Zero, all.Extra);
        }
    }
}
