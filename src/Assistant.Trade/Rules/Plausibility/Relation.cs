using System.Collections.Immutable;
using static Assistant.Trade.Rules.Plausibility.Witness;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>What one reading may differ from another by, in K, in any plant, sound or faulty; outside it one of the two was misread or miswritten.</summary>
/// <param name="RunningOnly">Holds only while the compressor runs.</param>
internal readonly record struct Relation(Witness One, Witness Other, double Least, double Most, bool RunningOnly)
{
    /// <summary>Physical orders (heat flows from warm to cold) widened by instrument error, and common-practice bounds.</summary>
    public static ImmutableArray<Relation> All { get; } =
    [
        // The same air, by different thermometers. A broken sensor is some degrees out; a wrong unit is more.
        Always(Box, BoxCheck, -10, 10),
        Always(Box, AirOn, -10, 10),
        Always(BoxCheck, AirOn, -4, 4),
        Always(Box, Product, -16, 14),
        Always(BoxCheck, Product, -12, 12),
        Always(Box, Setpoint, -12, 24),
        Always(BoxCheck, Setpoint, -6, 22),
        Always(AirOn, Setpoint, -6, 22),
        Always(AirOn, AirOff, -2.5, 18),
        Always(Box, AirOff, -9, 24),
        Always(BoxCheck, AirOff, -4, 18),

        // The coil is colder than its air, and what leaves it lies between.
        Running(AirOn, Suction, -1.7, 48),
        Running(BoxCheck, Suction, -1.7, 48),
        Running(Box, Suction, -9, 48),
        Running(AirOn, Evaporator, -1.7, 48),
        Running(Box, Evaporator, -9, 48),
        Running(AirOff, Evaporator, -2.5, 45),
        Running(AirOff, Suction, -2.5, 45),
        Running(AirOn, Bulb, -3.5, 48),
        Running(BoxCheck, Bulb, -3.5, 48),
        Running(Box, Bulb, -11, 48),
        Running(Bulb, Suction, -2.5, 48),
        Running(Bulb, Evaporator, -2.5, 48),
        Running(Evaporator, Suction, -2.5, 7),
        Running(SuctionLine, Suction, -3, 75),
        Running(SuctionLine, Bulb, -7, 35),

        // The high side, from the discharge to the valve, cools on its way and stays over the air that cools it.
        Running(Condensing, Suction, 8, 110),
        Running(DischargeLine, Condensing, 2, 105),
        Always(Condensing, Ambient, -80, 62),
        Running(Condensing, Ambient, -2.5, 62),
        Running(Condensing, LiquidBubble, -2.5, 14),
        Running(Condensing, LiquidLine, -2.5, 42),
        Running(Condensing, DrierInlet, -2.5, 42),
        Running(LiquidBubble, LiquidLine, -2.5, 42),
        Running(LiquidLine, Ambient, -6, 60),
        Running(LiquidLine, DrierInlet, -3, 3),

        // Hot gas mixed in at a head valve warms the liquid line far over what leaves the condenser, up to the condensing temperature.
        Running(CondenserOutlet, LiquidLine, -55, 20),
        Running(Condensing, CondenserOutlet, -2.5, 60),
        Running(CondenserOutlet, Ambient, -6, 60),
        Running(DrierInlet, DrierOutlet, -2.2, 24),
        Running(LiquidLine, DrierOutlet, -3, 25),
        Running(LiquidLine, LiquidAtCoil, -6, 30),
        Running(DrierOutlet, LiquidAtCoil, -8, 12),

        // At rest the high side is at the temperature around it, or above it with a foreign gas.
        Always(HighSideAtRest, Ambient, -5, 24),
        Always(Condensing, HighSideAtRest, -80, 55),

        // A setting that a control can have, and a head it lets stand.
        Running(Condensing, HeadSetting, -40, 45),
    ];

    public bool Holds(double one, double other) => double.IsNaN(one) || double.IsNaN(other) || (one - other >= Least && one - other <= Most);

    private static Relation Always(Witness one, Witness other, double least, double most) => new(one, other, least, most, false);

    private static Relation Running(Witness one, Witness other, double least, double most) => new(one, other, least, most, true);
}
