using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using UnitsNet;

namespace Assistant.Trade.Sums;

/// <summary>A box temperature at a time.</summary>
public readonly record struct BoxReading(Duration At, CelsiusTemperature Temperature);

/// <summary>Where a warm box is heading.</summary>
/// <param name="LevelsOffAt">The temperature it would come to with nothing changed.</param>
/// <param name="TimeConstant">In which the distance to it falls to 37 %.</param>
/// <param name="ToSetpoint">From the last reading on; zero where it is there; null where it will not get there.</param>
public sealed record PullDown(CelsiusTemperature LevelsOffAt, Duration TimeConstant, Duration? ToSetpoint)
{
    /// <summary>How far the curve lies above <see cref="LevelsOffAt"/> at the first reading; below it where the box warms.</summary>
    public TemperatureDifference FromStart { get; init; }

    // A box that is still on a straight line fits every long time constant: beyond this many spans the fit is called straight.
    private const double LongestSpans = 20;
    private const double ShortestSpans = 0.05;

    /// <summary>
    /// First-order fit T = T_end + (T_0 - T_end) exp(-t / tau) by least squares. Null with fewer than three readings at different times.
    /// Source: lumped heat capacity, constant load and coil.
    /// </summary>
    public static PullDown? Fit(ImmutableArray<BoxReading> readings, CelsiusTemperature setpoint)
    {
        if (readings.Select(r => r.At).Distinct().Count() < 3)
        {
            return null;
        }

        var start = readings.Min(r => r.At.Seconds);
        var last = readings.MaxBy(r => r.At.Seconds);
        var span = last.At.Seconds - start;
        var points = readings.Select(r => (Time: r.At.Seconds - start, r.Temperature.Degrees)).ToArray();
        var tau = BestTimeConstant(points, Math.Log(span * ShortestSpans), Math.Log(span * LongestSpans));
        var (end, amplitude, _) = Line(points, tau);
        return new(new(end), Duration.FromSeconds(tau), ToReach(setpoint.Degrees, end, amplitude * Math.Exp(-span / tau), tau)) { FromStart = new(amplitude) };
    }

    /// <summary>The curve's temperature at a time since the first reading.</summary>
    public CelsiusTemperature At(Duration sinceFirst) => LevelsOffAt + (FromStart * Math.Exp(-sinceFirst.Seconds / TimeConstant.Seconds));

    private static Duration? ToReach(double setpoint, double end, double distance, double tau)
    {
        var now = end + distance;
        if (now <= setpoint)
        {
            return Duration.Zero;
        }

        return distance > 0 && end < setpoint ? Duration.FromSeconds(tau * Math.Log(distance / (setpoint - end))) : null;
    }

    // The misfit over the logarithm of tau has one valley: a coarse walk finds it, a golden section its bottom.
    private static double BestTimeConstant((double Time, double Degrees)[] points, double low, double high)
    {
        const int steps = 60;
        var step = (high - low) / steps;
        var best = Enumerable.Range(0, steps + 1).MinBy(i => Line(points, Math.Exp(low + (i * step))).Misfit);
        var (a, b) = (Math.Max(low, low + ((best - 1) * step)), Math.Min(high, low + ((best + 1) * step)));
        var golden = (Math.Sqrt(5) - 1) / 2;
        for (var n = 0; n < 60; n++)
        {
            var (c, d) = (b - (golden * (b - a)), a + (golden * (b - a)));
            (a, b) = Line(points, Math.Exp(c)).Misfit < Line(points, Math.Exp(d)).Misfit ? (a, d) : (c, b);
        }

        return Math.Exp((a + b) / 2);
    }

    // For a given tau the temperatures are a straight line over exp(-t / tau).
    private static (double End, double Amplitude, double Misfit) Line((double Time, double Degrees)[] points, double tau)
    {
        var meanX = points.Average(p => Math.Exp(-p.Time / tau));
        var meanY = points.Average(p => p.Degrees);
        var (xx, xy) = (0.0, 0.0);
        foreach (var (time, degrees) in points)
        {
            var x = Math.Exp(-time / tau) - meanX;
            xx += x * x;
            xy += x * (degrees - meanY);
        }

        var amplitude = xy / xx;
        var end = meanY - (amplitude * meanX);
        return (end, amplitude, points.Sum(p => Math.Pow(p.Degrees - end - (amplitude * Math.Exp(-p.Time / tau)), 2)));
    }
}
