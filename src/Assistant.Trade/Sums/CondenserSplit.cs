using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>How far the condensing temperature stands above the air that cools the condenser.</summary>
public static class CondenserSplit
{
    /// <summary>SCT (dew) - ambient, K. Source: definition.</summary>
    public static TemperatureDifference Of(CelsiusTemperature saturatedCondensing, CelsiusTemperature ambient) => saturatedCondensing - ambient;

    /// <summary>
    /// The usual split of a condensing unit at design where neither plate nor record says it: 20 to 30 degF. Common practice; remote
    /// condensers are built for 15 to 20 (cooler) and 10 to 15 (freezer).
    /// </summary>
    public static (TemperatureDifference Low, TemperatureDifference High) Usual { get; } =
        (TemperatureDifference.FromFahrenheitDegrees(20), TemperatureDifference.FromFahrenheitDegrees(30));
}
