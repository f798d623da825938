using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// Condensing temperature over what ambient, design split and head pressure control would give, or over the control's setting. The
/// directions are the trade's and Rossi and Braun's (1997); how far is common practice.
/// </summary>
internal static class HeadLimits
{
    /// <summary>A sound condenser stands from 5 degF under to 4.5 degF over what is expected of it.</summary>
    public static TemperatureDifference SoundLow { get; } = new(-3);
    public static TemperatureDifference SoundHigh { get; } = new(2.5);

    /// <summary>How far sound condensers differ: 1.3 degF.</summary>
    public static TemperatureDifference SoundScatter { get; } = new(0.7);

    /// <summary>And those under a fault: 1.4 degF.</summary>
    public static TemperatureDifference Scatter { get; } = new(0.8);

    /// <summary>Well over: a condenser that cannot give off its heat, or a control that holds it up, 4.5 degF.</summary>
    public static TemperatureDifference WellOver { get; } = new(2.5);

    /// <summary>Over: a condenser that liquid or gas takes room from, 1.8 degF; its subcooling speaks as well.</summary>
    public static TemperatureDifference Over { get; } = new(1);

    /// <summary>Not over by more than instruments and design leave open, 3.6 degF.</summary>
    public static TemperatureDifference NotOver { get; } = new(2);

    /// <summary>A slack compressor leaves the head usual to low: not over by 2 degF.</summary>
    public static TemperatureDifference SlackHigh { get; } = new(1);

    /// <summary>A short charge lets it fall, at most by 29 degF while anything still circulates.</summary>
    public static TemperatureDifference ShortOfChargeLow { get; } = new(-16);

    /// <summary>Under what is expected in the cold: by 3.6 degF.</summary>
    public static TemperatureDifference Under { get; } = new(-2);

    /// <summary>A large load moves it little: from 5 degF under to 7 over.</summary>
    public static TemperatureDifference LoadedLow { get; } = new(-3);
    public static TemperatureDifference LoadedHigh { get; } = new(4);

    /// <summary>Split to what design and duty ask for: a sound condenser shows at least 0.8 of it.</summary>
    public static Share SoundSplit { get; } = new(0.8);

    /// <summary>A slack compressor has little to reject: at most 0.85 of it.</summary>
    public static Share SlackSplit { get; } = new(0.85);

    /// <summary>How far condensers differ in that: 0.08.</summary>
    public static Share SplitScatter { get; } = new(0.08);

    /// <summary>A control that works holds the head no more than 4.5 degF under its setting (its droop).</summary>
    public static TemperatureDifference Droop { get; } = new(-2.5);

    /// <summary>A head this far under the setting is not held: 4.5 degF.</summary>
    public static TemperatureDifference NotHeld { get; } = new(-2.5);

    /// <summary>The head at its setting or over it.</summary>
    public static TemperatureDifference AtSetting { get; } = new(0);

    /// <summary>The setting must lie over what the weather alone would give by 1.8 degF before the control has anything to do; so far the plant's own split is known.</summary>
    public static TemperatureDifference ControlHasWork { get; } = new(1);

    /// <summary>1.8 degF: how far controls and charges differ in the cold.</summary>
    public static TemperatureDifference ColdScatter { get; } = new(1);

    /// <summary>A flooded condenser's split lies over its design by at least 5.4 degF.</summary>
    public static TemperatureDifference FloodedSplit { get; } = new(3);

    /// <summary>With a short charge too little is left to flood with, yet some: 6 degF.</summary>
    public static TemperatureDifference ShortFloodedSplit { get; } = new(3.5);

    /// <summary>A condenser that works whole in the cold has its design split, from 11 degF under to 7 over, widely: the wind blows too.</summary>
    public static TemperatureDifference WholeSplitLow { get; } = new(-6);
    public static TemperatureDifference WholeSplitHigh { get; } = new(4);
    public static TemperatureDifference WholeSplitScatter { get; } = new(8);

    /// <summary>With nothing let through, the split is no measure: up to 72 degF.</summary>
    public static TemperatureDifference RestingSplit { get; } = new(40);

    /// <summary>A condenser is seen obstructed (1) or sound (0): between the two.</summary>
    public static Share Obstructed { get; } = new(0.5);

    /// <summary>Dirt is a matter of degree, so a dirty look alone does not speak against a sound plant.</summary>
    public static Share DirtScatter { get; } = new(0.3);

    /// <summary>But a clean look speaks against a condenser short of air.</summary>
    public static Share CleanScatter { get; } = new(0.22);
}
