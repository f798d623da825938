namespace Assistant.Trade.Refrigerants;

/// <summary>
/// A smooth curve through values at equal steps: a cubic a step with fourth-order slopes at the knots (continuous first
/// derivative). A monotone one has its slopes limited so that no step overshoots (Fritsch and Carlson 1980, SIAM J. Numer.
/// Anal. 17, 238). Look-up is O(1) and allocates nothing.
/// </summary>
internal sealed class UniformCubic
{
    private readonly double first;
    private readonly double perStep;
    private readonly double[] coefficients;

    private UniformCubic(double first, double step, double[] coefficients)
    {
        this.first = first;
        Step = step;
        perStep = 1 / step;
        this.coefficients = coefficients;
    }

    public double Step { get; }

    public int Intervals => coefficients.Length / 4;

    /// <summary>A curve through at least five values.</summary>
    public static UniformCubic Through(double first, double step, ReadOnlySpan<double> values, bool monotone)
    {
        var slopes = Slopes(values);
        if (monotone)
        {
            Limit(slopes, values);
        }

        var coefficients = new double[(values.Length - 1) * 4];
        for (var i = 0; i < values.Length - 1; i++)
        {
            var rise = values[i + 1] - values[i];
            coefficients[4 * i] = values[i];
            coefficients[(4 * i) + 1] = slopes[i];
            coefficients[(4 * i) + 2] = (3 * rise) - (2 * slopes[i]) - slopes[i + 1];
            coefficients[(4 * i) + 3] = slopes[i] + slopes[i + 1] - (2 * rise);
        }

        return new(first, step, coefficients);
    }

    /// <summary>The value at <paramref name="x"/>, which must lie within the knots.</summary>
    public double At(double x)
    {
        var u = (x - first) * perStep;
        var i = Math.Min((int)u, Intervals - 1);
        return Within(i, u - i);
    }

    /// <summary>The value a share <paramref name="u"/> of the way through interval <paramref name="i"/>.</summary>
    public double Within(int i, double u)
    {
        var c = coefficients.AsSpan(4 * i, 4);
        return (((((c[3] * u) + c[2]) * u) + c[1]) * u) + c[0];
    }

    /// <summary>The share of the way through interval <paramref name="i"/> at which a monotone curve takes this value.</summary>
    public double Solve(int i, double value)
    {
        var c = coefficients.AsSpan(4 * i, 4);
        var rise = c[1] + c[2] + c[3];
        var u = (value - c[0]) / rise;

        // Within a step the curve is close to straight: three Newton steps reach the last digit.
        for (var n = 0; n < 3; n++)
        {
            var miss = (((((c[3] * u) + c[2]) * u) + c[1]) * u) + c[0] - value;
            var slope = (((3 * c[3] * u) + (2 * c[2])) * u) + c[1];
            u -= miss / slope;
        }

        return Math.Clamp(u, 0, 1);
    }

    public double KnotAt(int i) => first + (i * Step);

    private static double[] Slopes(ReadOnlySpan<double> y)
    {
        var last = y.Length - 1;
        var slopes = new double[y.Length];
        for (var i = 2; i <= last - 2; i++)
        {
            slopes[i] = (y[i - 2] - (8 * y[i - 1]) + (8 * y[i + 1]) - y[i + 2]) / 12;
        }

        slopes[0] = ((-25 * y[0]) + (48 * y[1]) - (36 * y[2]) + (16 * y[3]) - (3 * y[4])) / 12;
        slopes[1] = ((-3 * y[0]) - (10 * y[1]) + (18 * y[2]) - (6 * y[3]) + y[4]) / 12;
        slopes[last - 1] = ((3 * y[last]) + (10 * y[last - 1]) - (18 * y[last - 2]) + (6 * y[last - 3]) - y[last - 4]) / 12;
        slopes[last] = ((25 * y[last]) - (48 * y[last - 1]) + (36 * y[last - 2]) - (16 * y[last - 3]) + (3 * y[last - 4])) / 12;
        return slopes;
    }

    private static void Limit(double[] slopes, ReadOnlySpan<double> y)
    {
        var up = y[^1] > y[0] ? 1 : -1;
        for (var i = 0; i < y.Length; i++)
        {
            var before = i > 0 ? up * (y[i] - y[i - 1]) : double.PositiveInfinity;
            var after = i < y.Length - 1 ? up * (y[i + 1] - y[i]) : double.PositiveInfinity;
            slopes[i] = up * Math.Clamp(up * slopes[i], 0, 3 * Math.Min(before, after));
        }
    }
}
