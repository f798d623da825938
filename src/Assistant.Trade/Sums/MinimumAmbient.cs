using Assistant.Trade.Quantities;

namespace Assistant.Trade.Sums;

/// <summary>The coldest outside air at which a condenser keeps its head up without help.</summary>
public static class MinimumAmbient
{
    /// <summary>The least condensing temperature many expansion valves are sized for where no setting is known: 90 degF dew. Common practice.</summary>
    public static CelsiusTemperature UsualCondensing { get; } = new(290.0 / 9.0);

    /// <summary>SCT_min - split, at design rejection. 90 degF less 30 is the usual 60 degF. Common practice; the arithmetic is the split's definition.</summary>
    /// <param name="leastCondensing">The head to be held, as a dew temperature.</param>
    public static CelsiusTemperature Of(CelsiusTemperature leastCondensing, TemperatureDifference split) => leastCondensing - split;
}
