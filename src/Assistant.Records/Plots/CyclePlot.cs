using System.Globalization;
using Assistant.Dialogue.Replies;
using Assistant.Records.Plots.Drawing;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;
using SpecificEnergy = UnitsNet.SpecificEnergy;

namespace Assistant.Records.Plots;

/// <summary>The measured cycle over the refrigerant's dome, pressure over enthalpy, with the cycle it should be beside it.</summary>
public static class CyclePlot
{
    public const string Name = "cycle";
    private const int DomePoints = 120;

    /// <summary>The plot, or null where the readings do not give a cycle.</summary>
    public static Plot? Of(PlottedVisit visit, PhraseBook phrases)
    {
        ArgumentNullException.ThrowIfNull(visit);
        if (visit.Measured is not { } measured)
        {
            return null;
        }

        var words = new PlotWords(phrases, visit.Units);
        return new(
            Name,
            words.Say("cycle.title", ("refrigerant", measured.Refrigerant.Designation)),
            string.Join(' ', Alt(visit, measured, words)),
            Draw(measured, visit.Designed, words));
    }

    private static PlotDrawing Draw(RefrigerationCycle measured, RefrigerationCycle? designed, PlotWords words)
    {
        var dome = SaturationDome.Of(measured.Refrigerant, DomePoints);
        var corners = measured.Points.Concat(designed?.Points ?? []).Select(p => At(p.Pressure, p.Enthalpy)).ToList();
        var lowest = measured.Points.Concat(designed?.Points ?? []).Min(p => p.Pressure.Pascals) / 2;
        (double X, double Y)[] shown = [.. corners, .. dome.Bubble.Concat(dome.Dew).Where(p => p.Pressure.Pascals >= lowest).Select(p => At(p.Pressure, p.Enthalpy))];
        var frame = new PlotFrame(
            Axis.Around(words.Axis("enthalpy", words.IsUs ? "Btu/lb" : "kJ/kg"), shown.Select(p => p.X)),
            Axis.AroundRatios(words.Axis("pressure", words.IsUs ? "psia" : "bar"), shown.Select(p => p.Y)));
        var empty = frame.Empty();
        return new(
            [
                .. empty.Strokes,
                frame.Line(Ink.Ground, dome.Bubble.Select(p => At(p.Pressure, p.Enthalpy))),
                frame.Line(Ink.Ground, dome.Dew.Select(p => At(p.Pressure, p.Enthalpy))),
                .. designed is null ? [] : new[] { frame.Line(Ink.Design, Round(designed)) },
                frame.Line(Ink.Measured, Round(measured)),
            ],
            [.. measured.Points.Select(p => new Dot(On(p), p.IsAssumed))],
            [.. empty.Labels, .. measured.Points.Select((p, i) => Number(On(p), p.Corner, i + 1))]);

        DrawnPoint On(CyclePoint corner)
        {
            var (x, y) = At(corner.Pressure, corner.Enthalpy);
            return frame.At(x, y);
        }

        (double X, double Y) At(AbsolutePressure pressure, SpecificEnergy enthalpy) => words.IsUs
            ? (enthalpy.BtuPerPound, pressure.ToPressure().PoundsForcePerSquareInch)
            : (enthalpy.KilojoulesPerKilogram, pressure.ToPressure().Bars);

        IEnumerable<(double X, double Y)> Round(RefrigerationCycle cycle) => cycle.Points.Append(cycle.Points[0]).Select(p => At(p.Pressure, p.Enthalpy));
    }

    /// <summary>The corner's number, outside the cycle.</summary>
    private static Label Number(DrawnPoint at, CycleCorner corner, int number)
    {
        var isLow = corner is CycleCorner.CompressorInlet or CycleCorner.EvaporatorInlet;
        var isRight = corner is CycleCorner.CompressorInlet or CycleCorner.CompressorOutlet;
        return new(new(at.X + (isRight ? 6 : -6), at.Y + (isLow ? 13 : -5)), number.ToString(CultureInfo.InvariantCulture), isRight ? -1 : 1, IsInside: true);
    }

    private static IEnumerable<string> Alt(PlottedVisit visit, RefrigerationCycle measured, PlotWords words)
    {
        yield return Sentence("cycle.measured", measured);
        if (visit.Designed is { } designed)
        {
            yield return Sentence("cycle.designed", designed);
        }

        yield return words.Say("cycle.corners");

        string Sentence(string key, RefrigerationCycle cycle)
        {
            var (suction, head) = (cycle.Points[0].Pressure, cycle.Points[1].Pressure);
            var table = cycle.Refrigerant.Saturation;
            return words.Say(
                key,
                ("suction", suction.ToGauge(visit.Facts.Barometer)), ("evaporating", table.DewTemperature(suction)),
                ("head", head.ToGauge(visit.Facts.Barometer)), ("condensing", table.DewTemperature(head)),
                ("heat", Heat(cycle.Points[0].Enthalpy - cycle.Points[3].Enthalpy)));
        }

        string Heat(SpecificEnergy taken) => words.IsUs
            ? string.Create(CultureInfo.InvariantCulture, $"{taken.BtuPerPound:0} Btu/lb")
            : string.Create(CultureInfo.InvariantCulture, $"{taken.KilojoulesPerKilogram:0} kJ/kg");
    }
}
