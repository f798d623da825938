namespace Assistant.Trade.Refrigerants;

/// <summary>A surface through values on a grid of equal steps, by the cubic through the four nearest knots in each direction. O(1), no allocation.</summary>
internal sealed class CubicSurface(double firstX, double stepX, double firstY, double stepY, double[,] values)
{
    public double FirstX => firstX;

    public double LastX => firstX + ((values.GetLength(0) - 1) * stepX);

    public double FirstY => firstY;

    public double LastY => firstY + ((values.GetLength(1) - 1) * stepY);

    /// <summary>The value at a point within the grid.</summary>
    public double At(double x, double y)
    {
        var (i, u) = Place((x - firstX) / stepX, values.GetLength(0));
        var (j, v) = Place((y - firstY) / stepY, values.GetLength(1));
        var along = Weights(v);
        Span<double> lines = stackalloc double[4];
        for (var k = 0; k < 4; k++)
        {
            lines[k] = (along.A * values[i + k, j]) + (along.B * values[i + k, j + 1]) + (along.C * values[i + k, j + 2]) + (along.D * values[i + k, j + 3]);
        }

        var across = Weights(u);
        return (across.A * lines[0]) + (across.B * lines[1]) + (across.C * lines[2]) + (across.D * lines[3]);
    }

    // The first of the four knots and how far from it the point lies; at an edge the four are the outermost ones.
    private static (int First, double Offset) Place(double position, int knots)
    {
        var first = Math.Clamp((int)position - 1, 0, knots - 4);
        return (first, position - first);
    }

    // Lagrange weights of knots 0, 1, 2, 3.
    private static (double A, double B, double C, double D) Weights(double t) =>
        (-(t - 1) * (t - 2) * (t - 3) / 6, t * (t - 2) * (t - 3) / 2, -t * (t - 1) * (t - 3) / 2, t * (t - 1) * (t - 2) / 6);
}
