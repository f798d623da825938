namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// How much it weighs when a thing is seen otherwise than a fault shows it. The trade's judgement of how surely a thing is seen and how
/// seldom it deceives: common practice.
/// </summary>
internal static class Weights
{
    /// <summary>Where the glass is the fault's own test.</summary>
    public static Weight GlassDecides { get; } = new(14);

    /// <summary>Where the glass only goes with it: it may be short of a bubble, or the liquid may flash after it.</summary>
    public static Weight GlassSpeaks { get; } = new(9);

    /// <summary>Behind ice the glass tells little.</summary>
    public static Weight GlassThroughIce { get; } = new(3);

    /// <summary>Ice is seen beyond doubt: nothing is judged through a blocked coil.</summary>
    public static Weight Ice { get; } = new(16);

    /// <summary>A fan of the coil that stands.</summary>
    public static Weight CoilFans { get; } = new(10);

    /// <summary>All fans turning hardly speak against a want of air: guards and blades are dirty as often.</summary>
    public static Weight CoilFansTurn { get; } = new(0.25);

    /// <summary>Whether the compressor runs.</summary>
    public static Weight CompressorSeen { get; } = new(14);

    /// <summary>A compressor that runs rules out that it does not.</summary>
    public static Weight CompressorStill { get; } = new(40);

    /// <summary>A compressor that starts and stops holds no steady head by which to judge a control.</summary>
    public static Weight HeadWhileCycling { get; } = new(4);

    /// <summary>Whether the control calls.</summary>
    public static Weight Call { get; } = new(14);

    /// <summary>A wrong setting is more often found satisfied; a call hardly speaks against it.</summary>
    public static Weight CallUnderAWrongSetting { get; } = new(2);

    /// <summary>A control that calls rules out that none does, whatever else is read.</summary>
    public static Weight ACallIsACall { get; } = new(41);

    /// <summary>Whether the liquid solenoid has current.</summary>
    public static Weight Solenoid { get; } = new(12);

    /// <summary>One that has current may still not open.</summary>
    public static Weight SolenoidStuck { get; } = new(2);

    public static Weight Defrost { get; } = new(12);

    /// <summary>A leaking door hardly speaks against another fault.</summary>
    public static Weight Door { get; } = new(2);

    /// <summary>A sound door speaks against a load, a delivery left open.</summary>
    public static Weight DoorOfALoad { get; } = new(6);

    /// <summary>Which head pressure control there is.</summary>
    public static Weight HeadControl { get; } = new(12);
}
