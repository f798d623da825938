namespace Assistant.Trade.Rules.Thresholds;

/// <summary>What the compressor takes and does. Common practice for small reciprocating and scroll compressors.</summary>
internal static class CompressorLimits
{
    /// <summary>Running current to rated: a sound compressor at work takes half of it or more.</summary>
    public static Share SoundCurrent { get; } = new(0.5);
    public static Share SoundCurrentScatter { get; } = new(0.1);

    /// <summary>A slack one takes less than its plate says: at most 0.8.</summary>
    public static Share SlackCurrent { get; } = new(0.8);
    public static Share SlackCurrentScatter { get; } = new(0.08);

    /// <summary>Isentropic work to the work put in, by the line temperatures: 0.6 to 0.85 sound.</summary>
    public static Share SoundWorkLow { get; } = new(0.6);
    public static Share SoundWorkHigh { get; } = new(0.85);

    /// <summary>A slack one heats what it takes: at most 0.6.</summary>
    public static Share SlackWork { get; } = new(0.6);

    /// <summary>How far compressors and clamps differ in that: 0.04.</summary>
    public static Share WorkScatter { get; } = new(0.04);
}
