using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// Superheat at the bulb over the middle of the usual range (8 to 12 degF in a cooler, 6 to 8 in a freezer). Trade sheets give the usual
/// range and the direction of each fault; how far one has to go is common practice, set outside what a sound valve does while it hunts.
/// </summary>
internal static class SuperheatLimits
{
    /// <summary>A sound valve holds from 4 degF under to 5 degF over the middle: common practice, the range widened by hunting.</summary>
    public static TemperatureDifference SoundLow { get; } = new(-2.2);
    public static TemperatureDifference SoundHigh { get; } = new(2.8);

    /// <summary>How far sound valves differ: 1.3 degF, common practice.</summary>
    public static TemperatureDifference Scatter { get; } = new(0.7);

    /// <summary>And hungry coils, whose superheat moves with the flash gas: 1.4 degF, common practice.</summary>
    public static TemperatureDifference HungryScatter { get; } = new(0.8);

    /// <summary>Short of charge: the valve opens wider first, so a little more is enough, 2 degF. Common practice.</summary>
    public static TemperatureDifference ShortOfCharge { get; } = new(1.2);

    /// <summary>A throttled liquid line: 4 degF more. Common practice.</summary>
    public static TemperatureDifference Restricted { get; } = new(2);

    /// <summary>A valve that lets too little through: beyond what hunting gives, 4.5 degF more. Common practice.</summary>
    public static TemperatureDifference Starved { get; } = new(2.5);

    /// <summary>A head too low to feed the valve does not lower the superheat: less 2 degF for the instruments. Common practice.</summary>
    public static TemperatureDifference LowHead { get; } = new(-1);

    /// <summary>A valve that lets too much through: 4.7 degF less, which leaves a cooler 5 and a freezer 2. Common practice.</summary>
    public static TemperatureDifference Overfed { get; } = new(-2.6);

    /// <summary>An overfed coil's superheat lies near nothing and scatters less: 1 degF, common practice.</summary>
    public static TemperatureDifference OverfedScatter { get; } = new(0.6);

    /// <summary>Behind ice the valve closes down with the load, and may fall behind it: common practice.</summary>
    public static TemperatureDifference IcedLow { get; } = new(-3.5);

    /// <summary>With little air the same, somewhat less: common practice.</summary>
    public static TemperatureDifference LittleAirLow { get; } = new(-3);

    /// <summary>Neither of them starves the coil: not over the usual by 4 degF. Common practice.</summary>
    public static TemperatureDifference LittleAirHigh { get; } = new(2);

    /// <summary>A slack compressor takes little: the valve follows, low to normal. Directions after Rossi and Braun 1997, the figures common practice.</summary>
    public static TemperatureDifference SlackLow { get; } = new(-2.4);
    public static TemperatureDifference SlackHigh { get; } = new(1.5);

    /// <summary>A slack compressor holds the low side steady: 1 degF, common practice.</summary>
    public static TemperatureDifference SlackScatter { get; } = new(0.6);

    /// <summary>A warm room opens the valve wide: normal to high, up to 9 degF over. Common practice.</summary>
    public static TemperatureDifference LoadedHigh { get; } = new(5);

    /// <summary>Superheat where the vapour enters the compressor: at least 20 degF is asked for; under 12.6 degF of it a line is called wet, which
    /// leaves room for a short insulated line. Common practice.</summary>
    public static TemperatureDifference WetAtCompressor { get; } = new(7);

    /// <summary>Behind an overfed coil the vapour comes with less than the 20 degF asked for at the compressor: common practice.</summary>
    public static TemperatureDifference LittleAtCompressor { get; } = new(20 / 1.8);

    /// <summary>Suction lines differ in length and insulation: 2.7 degF, common practice.</summary>
    public static TemperatureDifference SuctionLineScatter { get; } = new(1.5);
}
