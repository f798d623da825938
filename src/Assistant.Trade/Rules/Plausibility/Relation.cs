using System.Collections.Immutable;
using Assistant.Trade.Quantities;
using static Assistant.Trade.Rules.Plausibility.Witness;
using static Assistant.Trade.Rules.Thresholds.PairLimits;

namespace Assistant.Trade.Rules.Plausibility;

/// <summary>What one reading may differ from another by, in K, in any plant, sound or faulty; outside it one of the two was misread or miswritten.</summary>
/// <param name="RunningOnly">Holds only while the compressor runs.</param>
internal readonly record struct Relation(Witness One, Witness Other, double Least, double Most, bool RunningOnly)
{
    /// <summary>Physical orders (heat flows from warm to cold) widened by instrument error, and common-practice bounds.</summary>
    public static ImmutableArray<Relation> All { get; } =
    [
        // The same air, by different thermometers. A broken sensor is some degrees out; a wrong unit is more.
        Always(Box, BoxCheck, -FailingDisplay, FailingDisplay),
        Always(Box, AirOn, -FailingDisplay, FailingDisplay),
        Always(BoxCheck, AirOn, -PlacesOfARoom, PlacesOfARoom),
        Always(Box, Product, GoodsOverDisplay, GoodsUnderDisplay),
        Always(BoxCheck, Product, -GoodsFromAir, GoodsFromAir),
        Always(Box, Setpoint, DisplayUnderSetpoint, DisplayOverSetpoint),
        Always(BoxCheck, Setpoint, RoomUnderSetpoint, RoomOverSetpoint),
        Always(AirOn, Setpoint, RoomUnderSetpoint, RoomOverSetpoint),
        Always(AirOn, AirOff, InstrumentsOnly, AirFall),
        Always(Box, AirOff, DisplayUnderCoil, DisplayOverLeavingAir),
        Always(BoxCheck, AirOff, -PlacesOfARoom, AirFall),

        // The coil is colder than its air, and what leaves it lies between.
        Running(AirOn, Suction, CoilOverAir, CoilUnderAir),
        Running(BoxCheck, Suction, CoilOverAir, CoilUnderAir),
        Running(Box, Suction, DisplayUnderCoil, CoilUnderAir),
        Running(AirOn, Evaporator, CoilOverAir, CoilUnderAir),
        Running(Box, Evaporator, DisplayUnderCoil, CoilUnderAir),
        Running(AirOff, Evaporator, InstrumentsOnly, CoilUnderLeavingAir),
        Running(AirOff, Suction, InstrumentsOnly, CoilUnderLeavingAir),
        Running(AirOn, Bulb, ClampInAir, CoilUnderAir),
        Running(BoxCheck, Bulb, ClampInAir, CoilUnderAir),
        Running(Box, Bulb, DisplayUnderBulb, CoilUnderAir),
        Running(Bulb, Suction, InstrumentsOnly, CoilUnderAir),
        Running(Bulb, Evaporator, InstrumentsOnly, CoilUnderAir),
        Running(Evaporator, Suction, InstrumentsOnly, SuctionLineDrop),
        Running(SuctionLine, Suction, ClampOnLine, VapourAtCompressor),
        Running(SuctionLine, Bulb, SuctionLineLoss, SuctionLineGain),

        // The high side, from the discharge to the valve, cools on its way and stays over the air that cools it.
        Running(Condensing, Suction, LeastLift, MostLift),
        Running(DischargeLine, Condensing, LeastDischarge, MostDischarge),
        Always(Condensing, Ambient, EqualisedCold, MostSplit),
        Running(Condensing, Ambient, InstrumentsOnly, MostSplit),
        Running(Condensing, LiquidBubble, InstrumentsOnly, HeadValveDrop),
        Running(Condensing, LiquidLine, InstrumentsOnly, MostSubcooling),
        Running(Condensing, DrierInlet, InstrumentsOnly, MostSubcooling),
        Running(LiquidBubble, LiquidLine, InstrumentsOnly, MostSubcooling),
        Running(LiquidLine, Ambient, LiquidUnderAir, LiquidOverAir),
        Running(LiquidLine, DrierInlet, -OneLine, OneLine),

        // Hot gas mixed in at a head valve warms the liquid line far over what leaves the condenser, up to the condensing temperature.
        Running(CondenserOutlet, LiquidLine, HotGasMixedIn, LineLoss),
        Running(Condensing, CondenserOutlet, InstrumentsOnly, ColdestOutlet),
        Running(CondenserOutlet, Ambient, LiquidUnderAir, LiquidOverAir),
        Running(DrierInlet, DrierOutlet, ClampsOnly, ShutDrier),
        Running(LiquidLine, DrierOutlet, -OneLine, ShutDrierFromLine),
        Running(LiquidLine, LiquidAtCoil, LineGain, LineFall),
        Running(DrierOutlet, LiquidAtCoil, GainAfterDrier, FallAfterDrier),

        // At rest the high side is at the temperature around it, or above it with a foreign gas.
        Always(HighSideAtRest, Ambient, RestUnderAmbient, RestOverAmbient),
        Always(Condensing, HighSideAtRest, EqualisedCold, RunningOverRest),

        // A setting that a control can have, and a head it lets stand.
        Running(Condensing, HeadSetting, HeadUnderSetting, HeadOverSetting),
    ];

    public bool Holds(double one, double other) => double.IsNaN(one) || double.IsNaN(other) || (one - other >= Least && one - other <= Most);

    private static Relation Always(Witness one, Witness other, TemperatureDifference least, TemperatureDifference most) => new(one, other, least.Kelvins, most.Kelvins, false);

    private static Relation Running(Witness one, Witness other, TemperatureDifference least, TemperatureDifference most) => new(one, other, least.Kelvins, most.Kelvins, true);
}
