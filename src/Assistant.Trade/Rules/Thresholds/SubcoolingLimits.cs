using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>Subcooling of the liquid at the unit, from the bubble point, on a plant with a receiver. Common practice throughout: a receiver flattens it.</summary>
internal static class SubcoolingLimits
{
    /// <summary>A sound plant with a receiver: 3 to 8.6 degF.</summary>
    public static TemperatureDifference SoundLow { get; } = new(1.7);
    public static TemperatureDifference SoundHigh { get; } = new(4.8);

    /// <summary>How far sound condensers differ in draining: 0.7 degF.</summary>
    public static TemperatureDifference Scatter { get; } = new(0.4);

    /// <summary>Where the condenser works otherwise than at design it drains less steadily: 0.9 degF.</summary>
    public static TemperatureDifference UnsteadyScatter { get; } = new(0.5);

    /// <summary>And where it stands partly full of liquid or of gas: 1.4 degF.</summary>
    public static TemperatureDifference FilledScatter { get; } = new(0.8);

    /// <summary>No liquid seal: not over 3.2 degF.</summary>
    public static TemperatureDifference NoSeal { get; } = new(1.8);

    /// <summary>Hot gas mixed in takes it away: not over 3 degF.</summary>
    public static TemperatureDifference MixedAway { get; } = new(1.7);

    /// <summary>Full liquid before a restriction: at least 3.2 degF.</summary>
    public static TemperatureDifference FullLiquid { get; } = new(1.8);

    /// <summary>Full liquid at a hungry valve: at least 2.3 degF.</summary>
    public static TemperatureDifference LiquidAtValve { get; } = new(1.3);

    /// <summary>Full liquid with the head down in the cold: at least 2.2 degF.</summary>
    public static TemperatureDifference LiquidInTheCold { get; } = new(1.2);

    /// <summary>As usual, or a little more where the split is large: not over 11 degF.</summary>
    public static TemperatureDifference UsualHigh { get; } = new(6);

    /// <summary>Apparent subcooling under a foreign gas, whose pressure is read as temperature: at least 7 degF.</summary>
    public static TemperatureDifference UnderGas { get; } = new(4);

    /// <summary>Liquid standing in the condenser: at least 9 degF, over what a sound one shows.</summary>
    public static TemperatureDifference Standing { get; } = new(5);
}
