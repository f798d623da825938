using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>The superheat a cold room's evaporator should run with, where its maker says nothing else.</summary>
/// <param name="Low">Least superheat in the accepted range.</param>
/// <param name="High">Greatest superheat in the accepted range.</param>
/// <param name="Aim">What to set for where the design TD is known: 0.7 of it. Null where it is not.</param>
public sealed record SuperheatTarget(TemperatureDifference Low, TemperatureDifference High, TemperatureDifference? Aim)
{
    /// <summary>At the compressor: enough that no liquid comes back, 20 degF at least. Common practice.</summary>
    public static TemperatureDifference LeastAtCompressor { get; } = TemperatureDifference.FromFahrenheitDegrees(20);

    /// <summary>
    /// At the evaporator: 8 to 12 degF in a cooler, 6 to 8 in a freezer; a known design TD moves it down, since vapour cannot leave
    /// the coil warmer than the air: 0.6 to 1.0 of the TD (10 degF TD: 6 to 10), aimed at 0.7. Common practice.
    /// Measured with a clear coil and the box within about 5 degF of its setpoint.
    /// </summary>
    public static SuperheatTarget AtEvaporator(bool freezer, TemperatureDifference? designTd)
    {
        var (low, high) = freezer ? (Degrees(6), Degrees(8)) : (Degrees(8), Degrees(12));
        return designTd is { } td
            ? new(Lesser(low, td * 0.6), Lesser(high, td), Lesser(high, td * 0.7))
            : new(low, high, null);
    }

    private static TemperatureDifference Degrees(double fahrenheit) => TemperatureDifference.FromFahrenheitDegrees(fahrenheit);

    private static TemperatureDifference Lesser(TemperatureDifference one, TemperatureDifference other) => one < other ? one : other;
}
