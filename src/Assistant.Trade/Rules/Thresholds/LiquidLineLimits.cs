using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>The liquid line's falls of temperature. A drop across the drier over about 3 degF is a restriction: common practice.</summary>
internal static class LiquidLineLimits
{
    /// <summary>A sound drier: up to 1.8 degF, two clamps' error.</summary>
    public static TemperatureDifference SoundDrier { get; } = new(1);

    /// <summary>How far two clamps on one pipe scatter: 0.5 degF.</summary>
    public static TemperatureDifference SoundDrierScatter { get; } = new(0.3);

    /// <summary>Over 3 degF across the drier.</summary>
    public static TemperatureDifference BlockedDrier { get; } = new(1.7);
    public static TemperatureDifference BlockedDrierScatter { get; } = new(0.4);

    /// <summary>From the unit to the coil, through cool rooms: up to 4.5 degF is the line's own.</summary>
    public static TemperatureDifference LineLoss { get; } = new(2.5);
    public static TemperatureDifference LineScatter { get; } = new(0.8);
}
