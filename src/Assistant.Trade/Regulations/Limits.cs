namespace Assistant.Trade.Regulations;

/// <summary>Comparison with a legal limit: a value that is the limit but for the last digits of its arithmetic is the limit.</summary>
internal static class Limits
{
    private const double Relative = 1e-9;

    public static bool AtLeast(double value, double limit) => value >= limit - (Math.Abs(limit) * Relative);

    public static bool Over(double value, double limit) => value > limit + (Math.Abs(limit) * Relative);
}
