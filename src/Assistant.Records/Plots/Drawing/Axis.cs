using System.Collections.Immutable;
using System.Globalization;

namespace Assistant.Records.Plots.Drawing;

/// <summary>An axis in the reader's unit.</summary>
/// <param name="Title">What it counts, with its unit.</param>
/// <param name="Low">The value at its beginning.</param>
/// <param name="High">The value at its end, above <paramref name="Low"/>.</param>
/// <param name="IsLogarithmic">Equal ratios take equal room; both ends are above zero.</param>
public sealed record Axis(string Title, double Low, double High, bool IsLogarithmic = false)
{
    private const int MostTicks = 7;
    private static readonly double[] Steps = [1, 2, 2.5, 5, 10];
    private static readonly double[] Leading = [1, 2, 5];

    /// <summary>An axis that holds all the values with a margin.</summary>
    /// <param name="fromZero">Begins at zero, without a margin there.</param>
    public static Axis Around(string title, IEnumerable<double> values, bool fromZero = false)
    {
        var (low, high) = Ends(values);
        low = fromZero ? Math.Min(0, low) : low;
        var margin = high > low ? (high - low) * 0.08 : 1;
        return new(title, fromZero ? low : low - margin, high + margin);
    }

    /// <summary>A logarithmic axis that holds all the values with a margin.</summary>
    public static Axis AroundRatios(string title, IEnumerable<double> values)
    {
        var (low, high) = Ends(values);
        return new(title, low / 1.25, high * 1.25, IsLogarithmic: true);
    }

    /// <summary>The values that carry a number: 1, 2, 2.5 or 5 times a power of ten.</summary>
    public ImmutableArray<double> Ticks => IsLogarithmic ? RatioTicks() : EvenTicks();

    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>How far along the axis a value lies: 0 at its beginning, 1 at its end.</summary>
    public double Share(double value) => IsLogarithmic ? Math.Log(value / Low) / Math.Log(High / Low) : (value - Low) / (High - Low);

    /// <summary>The number at a tick.</summary>
    public static string Number(double tick) => Math.Abs(tick) < 1e-9 ? "0" : tick.ToString("0.###", CultureInfo.InvariantCulture);

    private ImmutableArray<double> EvenTicks()
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10((High - Low) / MostTicks)));
        var step = power * Steps.First(s => (High - Low) / (power * s) <= MostTicks);
        var first = (long)Math.Ceiling((Low / step) - 1e-9);
        var last = (long)Math.Floor((High / step) + 1e-9);
        return [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => (first + i) * step)];
    }

    private ImmutableArray<double> RatioTicks() =>
    [
        .. from exponent in Enumerable.Range(-3, 10)
           from leading in Leading
           let value = leading * Math.Pow(10, exponent)
           where Holds(value)
           select value,
    ];

    private static (double Low, double High) Ends(IEnumerable<double> values) =>
        values.Aggregate((Low: double.PositiveInfinity, High: double.NegativeInfinity), (ends, v) => (Math.Min(ends.Low, v), Math.Max(ends.High, v)));
}
