namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// The evaporator: its TD over what design and the compressor's flow explain, the air's fall over the TD, and what the valve has to open.
/// Sound plants may show 20 to 40 % more TD in the cold, which the flow explains in part. Common practice.
/// </summary>
internal static class CoilLimits
{
    /// <summary>A sound coil: 0.8 to 1.2 of what is expected.</summary>
    public static Share SoundTdLow { get; } = new(0.8);
    public static Share SoundTdHigh { get; } = new(1.2);

    /// <summary>How far coils differ from their plate: a tenth.</summary>
    public static Share TdScatter { get; } = new(0.1);

    /// <summary>And under a fault: an eighth.</summary>
    public static Share FaultyTdScatter { get; } = new(0.12);

    /// <summary>Frost shuts coils unevenly: 0.15.</summary>
    public static Share IcedTdScatter { get; } = new(0.15);

    /// <summary>A hungry coil has more TD than usual: by a tenth.</summary>
    public static Share HungryTd { get; } = new(1.1);

    /// <summary>Short of charge, not less than usual.</summary>
    public static Share ShortOfChargeTd { get; } = new(1);

    /// <summary>With the head down in the cold, hardly less than usual.</summary>
    public static Share LowHeadTd { get; } = new(0.9);

    /// <summary>A quarter more with little air.</summary>
    public static Share LittleAirTd { get; } = new(1.25);

    /// <summary>Half as much again behind ice.</summary>
    public static Share IcedTd { get; } = new(1.5);

    /// <summary>A slack compressor leaves an eighth undone.</summary>
    public static Share SlackTd { get; } = new(0.88);

    /// <summary>A flooded coil is a good coil: 0.8 to 1.3.</summary>
    public static Share OverfedTdLow { get; } = new(0.8);

    /// <summary>Under a large load: 0.8 to 1.5.</summary>
    public static Share LoadedTdLow { get; } = new(0.68);
    public static Share LoadedTdHigh { get; } = new(1.5);

    /// <summary>Nothing let through: twice the usual and more.</summary>
    public static Share EmptyTd { get; } = new(2);
    public static Share EmptyTdScatter { get; } = new(0.2);

    /// <summary>The air falls by 0.2 to 0.6 of the TD over a sound coil.</summary>
    public static Share SoundAirLow { get; } = new(0.2);
    public static Share SoundAirHigh { get; } = new(0.6);

    /// <summary>How far coils differ in that: 0.06.</summary>
    public static Share AirScatter { get; } = new(0.06);

    /// <summary>Little air is cooled well: at least 0.53 of the TD.</summary>
    public static Share LittleAirFall { get; } = new(0.53);

    /// <summary>What air passes ice is cooled by at least 0.3 of it.</summary>
    public static Share IcedAirFall { get; } = new(0.3);

    /// <summary>An empty coil cools nothing: at most 0.2.</summary>
    public static Share EmptyAirFall { get; } = new(0.2);

    /// <summary>Opening the valve needs to its opening at design: a valve that is itself at fault has enough pressure before it, at most 1.</summary>
    public static Share EnoughPressure { get; } = new(1);

    /// <summary>Before a restriction nearly so: 1.05.</summary>
    public static Share RestrictedDemand { get; } = new(1.05);

    /// <summary>Short of charge: up to 1.2.</summary>
    public static Share ShortOfChargeDemand { get; } = new(1.2);

    /// <summary>A head too low to feed the valve asks for nearly all of it: 0.95.</summary>
    public static Share LowHeadDemand { get; } = new(0.95);

    /// <summary>The valve wants a tenth more than it had at design: the head does not feed it. Common practice.</summary>
    public static Share Underfed { get; } = new(1.1);

    /// <summary>How far valves differ in that: 0.08.</summary>
    public static Share DemandScatter { get; } = new(0.08);
}
