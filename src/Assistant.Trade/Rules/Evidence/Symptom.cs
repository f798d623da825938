namespace Assistant.Trade.Rules.Evidence;

/// <summary>
/// What a fault shows itself by: first the numbers, each set against what a healthy plant of this design would read in this
/// weather, then the things seen. The order is the order in which reasons are said.
/// </summary>
internal enum Symptom
{
    /// <summary>K: superheat at the bulb over the middle of the usual range.</summary>
    SuperheatExcess,

    /// <summary>Ratio: opening the valve needs to its opening at design.</summary>
    ValveDemand,

    /// <summary>K, from the bubble point.</summary>
    Subcooling,

    /// <summary>K: condensing temperature over what ambient, design split and head pressure control would give.</summary>
    HeadExcess,

    /// <summary>Ratio: condenser split to what design and duty ask for, in weather in which no head control works.</summary>
    SplitShare,

    /// <summary>K: the head control's setting over the condensing temperature the weather alone would give; below 0 the control has nothing to do.</summary>
    ControlDue,

    /// <summary>K: condensing temperature over the head control's setting, in weather in which it must work.</summary>
    HeadOverSetting,

    /// <summary>K: condenser split over the design split, in weather in which the head control must work.</summary>
    ColdSplitExcess,

    /// <summary>Ratio: evaporator TD to its design, for the flow that the suction pressure lets the compressor take.</summary>
    TdShare,

    /// <summary>Ratio: air cooled through the coil to the TD.</summary>
    AirShare,

    /// <summary>K: fall of temperature across the drier.</summary>
    DrierDrop,

    /// <summary>K: fall of temperature from the unit to the coil along the liquid line.</summary>
    LiquidLineDrop,

    /// <summary>K: high side at rest, as bubble temperature, over the ambient.</summary>
    StandingExcess,

    /// <summary>K: superheat where the vapour enters the compressor.</summary>
    CompressorSuperheat,

    /// <summary>Ratio: running current to rated.</summary>
    CurrentShare,

    /// <summary>Ratio: isentropic work to the work the discharge temperature tells of.</summary>
    CompressorEfficiency,

    /// <summary>K: the box over the temperature at which the control should call.</summary>
    BoxOverCall,

    /// <summary>K: the box over its setpoint.</summary>
    BoxOverSetpoint,

    /// <summary>K: two thermometers in the box apart.</summary>
    ThermometerGap,

    /// <summary>K: the warmest box that setpoint and differential allow, over the warmest that suits what is stored.</summary>
    SettingExcess,

    /// <summary>K: saturation temperature of the high side over that of the low side, machine at rest.</summary>
    RestingGap,

    /// <summary>K: box over the low side's saturation temperature, machine at rest.</summary>
    RestingTd,

    /// <summary>K: saturation temperature of the high side over ambient.</summary>
    HighSideOverAmbient,

    /// <summary>K: what is stored over the air of the room.</summary>
    ProductOverBox,

    /// <summary>K: the whole plant at rest and equalised, as dew temperature, over the colder of room and ambient, where its liquid would lie.</summary>
    EqualisedOverColdest,

    /// <summary>1 where the condenser is seen dirty, snowed up or short of a fan, 0 where it is seen sound.</summary>
    CondenserObstruction,
    SightGlass,
    CoilIce,
    EvaporatorFans,
    CondenserCoil,
    CondenserFans,
    Compressor,
    Calling,
    Solenoid,
    Defrost,
    Door,
    HeadControl,
    LiquidLineFeel,

    /// <summary>Yes where the room is known to be on its way down: something was just put right, or refrigerant was just added.</summary>
    PullingDown,
}
