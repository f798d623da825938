namespace Assistant.Trade.Rules.Plausibility;

/// <summary>The readings that can bear witness for or against each other, each as a temperature: pressures as their saturation temperatures.</summary>
internal enum Witness
{
    Box,
    BoxCheck,
    AirOn,
    AirOff,
    Product,
    Setpoint,
    Bulb,
    SuctionLine,
    Suction,
    Evaporator,
    Condensing,
    LiquidBubble,
    LiquidLine,
    DrierInlet,
    DrierOutlet,
    LiquidAtCoil,
    CondenserOutlet,
    DischargeLine,
    Ambient,
    HighSideAtRest,
    HeadSetting,
}
