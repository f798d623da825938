namespace Assistant.Trade.Refrigerants;

/// <summary>Saturation pressure against temperature and back: the logarithm of the pressure, rising with temperature at equal steps. Both ways O(1), no allocation.</summary>
internal sealed class LogPressureCurve
{
    private readonly UniformCubic curve;
    private readonly double[] logs;
    private readonly int[] guide;
    private readonly double perBucket;

    /// <param name="firstDegrees">Temperature of the first pressure, degC.</param>
    /// <param name="step">K between pressures.</param>
    /// <param name="pascals">Strictly rising, Pa absolute.</param>
    public LogPressureCurve(double firstDegrees, double step, ReadOnlySpan<double> pascals)
    {
        Lowest = pascals[0];
        Highest = pascals[^1];
        logs = new double[pascals.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = Math.Log(pascals[i]);
        }

        curve = UniformCubic.Through(firstDegrees, step, logs, monotone: true);

        // A bucket is no wider than the narrowest step, so at most one knot lies inside it.
        var narrowest = double.PositiveInfinity;
        for (var i = 1; i < logs.Length; i++)
        {
            narrowest = Math.Min(narrowest, logs[i] - logs[i - 1]);
        }

        perBucket = 1 / narrowest;
        guide = new int[(int)((logs[^1] - logs[0]) * perBucket) + 1];
        var interval = 0;
        for (var k = 0; k < guide.Length; k++)
        {
            while (interval < logs.Length - 2 && logs[interval + 1] <= logs[0] + (k * narrowest))
            {
                interval++;
            }

            guide[k] = interval;
        }
    }

    /// <summary>Pa absolute.</summary>
    public double Lowest { get; }

    /// <summary>Pa absolute.</summary>
    public double Highest { get; }

    /// <summary>Pa absolute at a temperature within the table, degC. At its ends rounding may not carry it out of the table.</summary>
    public double PascalsAt(double degrees) => Math.Clamp(Math.Exp(curve.At(degrees)), Lowest, Highest);

    /// <summary>degC at a pressure within the table, Pa absolute.</summary>
    public double DegreesAt(double pascals)
    {
        var log = Math.Log(pascals);
        var interval = guide[Math.Clamp((int)((log - logs[0]) * perBucket), 0, guide.Length - 1)];
        if (interval < logs.Length - 2 && log >= logs[interval + 1])
        {
            interval++;
        }

        return curve.KnotAt(interval) + (curve.Solve(interval, log) * curve.Step);
    }
}
