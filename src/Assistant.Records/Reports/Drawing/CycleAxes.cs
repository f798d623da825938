using System.Collections.Immutable;
using System.Globalization;
using Assistant.Trade.Quantities;
using SpecificEnergy = UnitsNet.SpecificEnergy;

namespace Assistant.Records.Reports.Drawing;

/// <summary>The axes of a pressure-enthalpy picture: enthalpy to the right, the logarithm of the absolute pressure upwards.</summary>
internal sealed class CycleAxes
{
    public const double Width = 470;
    public const double Height = 300;
    private static readonly int[] Leading = [1, 2, 5];
    private static readonly double[] Steps = [5, 10, 20, 25, 50, 100, 200];

    private const double Left = 46;
    private const double Right = Width - 12;
    private const double Top = 12;
    private const double Bottom = Height - 36;

    private readonly double lowEnthalpy;
    private readonly double highEnthalpy;
    private readonly double lowPressure;
    private readonly double highPressure;
    private readonly bool isUs;

    /// <summary>Axes that hold all the points with a margin.</summary>
    public CycleAxes(IReadOnlyCollection<(AbsolutePressure Pressure, SpecificEnergy Enthalpy)> points, UnitSystem units)
    {
        isUs = units == UnitSystem.Us;
        var (low, high) = (points.Min(p => Enthalpy(p.Enthalpy)), points.Max(p => Enthalpy(p.Enthalpy)));
        var margin = (high - low) * 0.06;
        (lowEnthalpy, highEnthalpy) = (low - margin, high + margin);
        (lowPressure, highPressure) = (points.Min(p => Pressure(p.Pressure)) / 1.25, points.Max(p => Pressure(p.Pressure)) * 1.25);
    }

    public string EnthalpyUnit => isUs ? "Btu/lb" : "kJ/kg";

    public string PressureUnit => isUs ? "psia" : "bar abs";

    public DrawnPoint At(AbsolutePressure pressure, SpecificEnergy enthalpy) => new(X(Enthalpy(enthalpy)), Y(Pressure(pressure)));

    public bool Holds(AbsolutePressure pressure, SpecificEnergy enthalpy) =>
        Pressure(pressure) >= lowPressure && Pressure(pressure) <= highPressure && Enthalpy(enthalpy) >= lowEnthalpy && Enthalpy(enthalpy) <= highEnthalpy;

    /// <summary>The frame, the grid and the numbers along it.</summary>
    public (ImmutableArray<Stroke> Strokes, ImmutableArray<Label> Labels) Frame()
    {
        var strokes = ImmutableArray.CreateBuilder<Stroke>();
        var labels = ImmutableArray.CreateBuilder<Label>();
        strokes.Add(new(Ink.Frame, [new(Left, Top), new(Left, Bottom), new(Right, Bottom), new(Right, Top), new(Left, Top)]));
        foreach (var pressure in Decades())
        {
            strokes.Add(new(Ink.Grid, [new(Left, Y(pressure)), new(Right, Y(pressure))]));
            labels.Add(new(new(Left - 4, Y(pressure) + 3), pressure.ToString("0.##", CultureInfo.InvariantCulture), 1));
        }

        var step = Step(highEnthalpy - lowEnthalpy);
        for (var enthalpy = Math.Ceiling(lowEnthalpy / step) * step; enthalpy <= highEnthalpy; enthalpy += step)
        {
            strokes.Add(new(Ink.Grid, [new(X(enthalpy), Top), new(X(enthalpy), Bottom)]));
            labels.Add(new(new(X(enthalpy), Bottom + 12), enthalpy.ToString("0", CultureInfo.InvariantCulture), 0));
        }

        labels.Add(new(new((Left + Right) / 2, Height - 6), EnthalpyUnit, 0));
        labels.Add(new(new(4, Top - 2), PressureUnit, -1));
        return (strokes.ToImmutable(), labels.ToImmutable());
    }

    private IEnumerable<double> Decades() =>
        from exponent in Enumerable.Range(-2, 7)
        from leading in Leading
        let pressure = leading * Math.Pow(10, exponent)
        where pressure > lowPressure && pressure < highPressure
        select pressure;

    private static double Step(double range) => Steps.FirstOrDefault(step => range / step <= 8, 500);

    private double Enthalpy(SpecificEnergy enthalpy) => isUs ? enthalpy.BtuPerPound : enthalpy.KilojoulesPerKilogram;

    private double Pressure(AbsolutePressure pressure) => isUs ? pressure.ToPressure().PoundsForcePerSquareInch : pressure.ToPressure().Bars;

    private double X(double enthalpy) => Left + ((enthalpy - lowEnthalpy) / (highEnthalpy - lowEnthalpy) * (Right - Left));

    private double Y(double pressure) => Bottom - (Math.Log(pressure / lowPressure) / Math.Log(highPressure / lowPressure) * (Bottom - Top));
}
