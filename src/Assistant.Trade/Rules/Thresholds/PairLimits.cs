using Assistant.Trade.Quantities;

namespace Assistant.Trade.Rules.Thresholds;

/// <summary>
/// How far one reading may lie under or over another in any plant, sound or faulty. The lower ends are the order of heat flow, from warm
/// to cold, widened by what instruments may be off by; the upper ends are what is met on a site: common practice. Outside them a reading was
/// misread or miswritten.
/// </summary>
internal static class PairLimits
{
    /// <summary>The colder of two over the warmer: two instruments, each a degree or a psi off, 4.5 degF.</summary>
    public static TemperatureDifference InstrumentsOnly { get; } = new(-2.5);

    /// <summary>A coil over its air: 3 degF, the psi near design suction.</summary>
    public static TemperatureDifference CoilOverAir { get; } = new(-1.7);

    /// <summary>A drier's outlet over its inlet: 4 degF, two clamps on one pipe.</summary>
    public static TemperatureDifference ClampsOnly { get; } = new(-2.2);

    /// <summary>A bulb over its air, or a line over its gauge's saturation: 5.4 to 6.3 degF, a clamp in still air.</summary>
    public static TemperatureDifference ClampInAir { get; } = new(-3.5);
    public static TemperatureDifference ClampOnLine { get; } = new(-3);

    /// <summary>A room's own display may be some degrees out when its sensor is failing: 18 degF, against a good thermometer; 16 to 20 against coil and bulb.</summary>
    public static TemperatureDifference FailingDisplay { get; } = new(10);
    public static TemperatureDifference DisplayUnderCoil { get; } = new(-9);
    public static TemperatureDifference DisplayUnderBulb { get; } = new(-11);
    public static TemperatureDifference DisplayOverLeavingAir { get; } = new(24);

    /// <summary>Two good thermometers in two places of the room: 7 degF.</summary>
    public static TemperatureDifference PlacesOfARoom { get; } = new(4);

    /// <summary>Goods over the display and under it: warm goods just in, or a room that has failed for hours; and against a good thermometer.</summary>
    public static TemperatureDifference GoodsOverDisplay { get; } = new(-16);
    public static TemperatureDifference GoodsUnderDisplay { get; } = new(14);
    public static TemperatureDifference GoodsFromAir { get; } = new(12);

    /// <summary>A room under and over its setpoint, by a failing display and by a good thermometer.</summary>
    public static TemperatureDifference DisplayUnderSetpoint { get; } = new(-12);
    public static TemperatureDifference DisplayOverSetpoint { get; } = new(24);
    public static TemperatureDifference RoomUnderSetpoint { get; } = new(-6);
    public static TemperatureDifference RoomOverSetpoint { get; } = new(22);

    /// <summary>What air loses through a coil at most: 32 degF.</summary>
    public static TemperatureDifference AirFall { get; } = new(18);

    /// <summary>A coil, its bulb or its gauge under the air: up to 86 degF, pumped nearly empty; leaving air a little less.</summary>
    public static TemperatureDifference CoilUnderAir { get; } = new(48);
    public static TemperatureDifference CoilUnderLeavingAir { get; } = new(45);

    /// <summary>The suction line's drop, as saturation: up to 13 degF.</summary>
    public static TemperatureDifference SuctionLineDrop { get; } = new(7);

    /// <summary>Vapour at the compressor over its saturation: up to 135 degF; over the bulb up to 63, under it 13 where the bulb sits warm.</summary>
    public static TemperatureDifference VapourAtCompressor { get; } = new(75);
    public static TemperatureDifference SuctionLineGain { get; } = new(35);
    public static TemperatureDifference SuctionLineLoss { get; } = new(-7);

    /// <summary>The lift a running compressor makes: at least 14 degF, at most 198.</summary>
    public static TemperatureDifference LeastLift { get; } = new(8);
    public static TemperatureDifference MostLift { get; } = new(110);

    /// <summary>Discharge gas over condensing: at least 3.6 degF, at most 190.</summary>
    public static TemperatureDifference LeastDischarge { get; } = new(2);
    public static TemperatureDifference MostDischarge { get; } = new(105);

    /// <summary>Condensing over the air: up to 112 degF, a valve holding the head in deep cold; under it by 144 at rest with a cold coil.</summary>
    public static TemperatureDifference MostSplit { get; } = new(62);
    public static TemperatureDifference EqualisedCold { get; } = new(-80);

    /// <summary>A head valve's drop, as saturation: up to 25 degF.</summary>
    public static TemperatureDifference HeadValveDrop { get; } = new(14);

    /// <summary>Liquid under condensing: up to 76 degF, a condenser nearly full in the cold; its outlet up to 108.</summary>
    public static TemperatureDifference MostSubcooling { get; } = new(42);
    public static TemperatureDifference ColdestOutlet { get; } = new(60);

    /// <summary>Liquid under the air that cooled it by 11 degF (a line through a cool room), over it by 108.</summary>
    public static TemperatureDifference LiquidUnderAir { get; } = new(-6);
    public static TemperatureDifference LiquidOverAir { get; } = new(60);

    /// <summary>Two clamps on one liquid line: 5.4 degF.</summary>
    public static TemperatureDifference OneLine { get; } = new(3);

    /// <summary>Hot gas mixed in at a head valve warms the liquid line far over what leaves the condenser; without it the line may lose 36 degF.</summary>
    public static TemperatureDifference HotGasMixedIn { get; } = new(-55);
    public static TemperatureDifference LineLoss { get; } = new(20);

    /// <summary>A drier nearly shut: a fall of up to 43 degF; seen from the line before it 45.</summary>
    public static TemperatureDifference ShutDrier { get; } = new(24);
    public static TemperatureDifference ShutDrierFromLine { get; } = new(25);

    /// <summary>The liquid line from unit to coil: gains 11 degF on a hot roof, loses 54 through cool rooms and restrictions; from the drier on 14 and 22.</summary>
    public static TemperatureDifference LineGain { get; } = new(-6);
    public static TemperatureDifference LineFall { get; } = new(30);
    public static TemperatureDifference GainAfterDrier { get; } = new(-8);
    public static TemperatureDifference FallAfterDrier { get; } = new(12);

    /// <summary>The high side at rest under the temperature around it by 9 degF (not levelled), over it by 43 (a foreign gas).</summary>
    public static TemperatureDifference RestUnderAmbient { get; } = new(-5);
    public static TemperatureDifference RestOverAmbient { get; } = new(24);
    public static TemperatureDifference RunningOverRest { get; } = new(55);

    /// <summary>The head under and over its control's setting: failed either way.</summary>
    public static TemperatureDifference HeadUnderSetting { get; } = new(-40);
    public static TemperatureDifference HeadOverSetting { get; } = new(45);
}
