namespace Assistant.Load;

/// <summary>Durations in the words of a results page.</summary>
internal static class Figures
{
    /// <param name="milliseconds">In any order.</param>
    /// <param name="share">0.5 for the median.</param>
    public static double At(IReadOnlyCollection<double> milliseconds, double share) => milliseconds.Order().ElementAt(Math.Min(milliseconds.Count - 1, (int)(milliseconds.Count * share)));

    public static string Spread(IReadOnlyCollection<double> milliseconds) =>
        $"median {At(milliseconds, 0.5):0.0} ms, p99 {At(milliseconds, 0.99):0.0} ms";
}
