using System.Collections.Immutable;
using System.Globalization;
using Assistant.Trade.Quantities;
using Assistant.Trade.Sums;

namespace Assistant.Records.Reports.Drawing;

/// <summary>Draws the measured cycle over the refrigerant's dome, with the cycle it should be beside it.</summary>
public static class CycleArtist
{
    private const int DomePoints = 120;

    /// <param name="designed">The cycle the unit is built for, of the same refrigerant; null where it is not known.</param>
    public static CycleDrawing Draw(RefrigerationCycle measured, RefrigerationCycle? designed, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var dome = SaturationDome.Of(measured.Refrigerant, DomePoints);
        var corners = measured.Points.Concat(designed?.Points ?? []).Select(p => (p.Pressure, p.Enthalpy)).ToList();
        var lowest = corners.Min(p => p.Pressure.Pascals) / 2;
        var shown = dome.Bubble.Concat(dome.Dew).Where(p => p.Pressure.Pascals >= lowest).Select(p => (p.Pressure, p.Enthalpy));
        var axes = new CycleAxes([.. corners, .. shown], units);

        var (strokes, labels) = axes.Frame();
        return new(
            CycleAxes.Width,
            CycleAxes.Height,
            [
                .. strokes,
                Branch(dome.Bubble, axes),
                Branch(dome.Dew, axes),
                .. designed is null ? [] : new[] { Round(Ink.Design, designed, axes) },
                Round(Ink.Measured, measured, axes),
            ],
            [.. measured.Points.Select(p => new Dot(axes.At(p.Pressure, p.Enthalpy), p.IsAssumed))],
            [.. labels, .. measured.Points.Select((p, i) => Number(axes.At(p.Pressure, p.Enthalpy), p.Corner, i + 1))]);
    }

    private static Stroke Branch(ImmutableArray<DomePoint> branch, CycleAxes axes) =>
        new(Ink.Dome, [.. branch.Where(p => axes.Holds(p.Pressure, p.Enthalpy)).Select(p => axes.At(p.Pressure, p.Enthalpy))]);

    private static Stroke Round(Ink ink, RefrigerationCycle cycle, CycleAxes axes) =>
        new(ink, [.. cycle.Points.Append(cycle.Points[0]).Select(p => axes.At(p.Pressure, p.Enthalpy))]);

    /// <summary>The corner's number, outside the cycle.</summary>
    private static Label Number(DrawnPoint at, CycleCorner corner, int number)
    {
        var isLow = corner is CycleCorner.CompressorInlet or CycleCorner.EvaporatorInlet;
        var isRight = corner is CycleCorner.CompressorInlet or CycleCorner.CompressorOutlet;
        return new(new(at.X + (isRight ? 6 : -6), at.Y + (isLow ? 12 : -5)), number.ToString(CultureInfo.InvariantCulture), isRight ? -1 : 1);
    }
}
