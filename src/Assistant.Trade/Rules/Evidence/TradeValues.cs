using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Thresholds;

namespace Assistant.Trade.Rules.Evidence;

/// <summary>
/// The defaults a site's record may override. Sources stand beside each; "common practice"
/// where there is no better one.
/// </summary>
internal static class TradeValues
{
    /// <summary>Superheat at the bulb of a cooler, middle of 8 to 12 degF: common practice.</summary>
    public static TemperatureDifference CoolerSuperheat { get; } = new(10 / 1.8);

    /// <summary>Superheat at the bulb of a freezer, middle of 6 to 8 degF: common practice.</summary>
    public static TemperatureDifference FreezerSuperheat { get; } = new(7 / 1.8);

    /// <summary>Evaporator TD of a walk-in freezer, 10 degF of 8 to 12: ASHRAE Handbook-Refrigeration, from memory.</summary>
    public static TemperatureDifference FreezerTd { get; } = new(10 / 1.8);

    /// <summary>And of a cooler: 8 to 12 degF where what is stored must not dry, up to 16 where it is packed; the middle, 12. Common practice.</summary>
    public static TemperatureDifference CoolerTd { get; } = new(12 / 1.8);

    /// <summary>What a TD unknown from the record may differ by from the default.</summary>
    public static Share EvaporatorTdSpread { get; } = new(0.25);

    /// <summary>Condenser split of a cooler's air-cooled condenser, 25 of 20 to 30 degF: common practice.</summary>
    public static TemperatureDifference CoolerSplit { get; } = new(25 / 1.8);

    /// <summary>Condenser split of a freezer's, between the 10 to 15 degF of a remote condenser and the 20 of a unit: common practice.</summary>
    public static TemperatureDifference FreezerSplit { get; } = new(18 / 1.8);

    /// <summary>Usual setting of a head pressure control, 77 to 91 degF of condensing: common practice ("90 less 30" is the winter reckoning).</summary>
    public static CelsiusTemperature HeadSetting { get; } = new(29);

    /// <summary>What a setting unknown from the record may differ by.</summary>
    public static TemperatureDifference HeadSettingSpread { get; } = new(4);

    /// <summary>What a condenser's split may differ by from its plate, and from the default where there is none: common practice.</summary>
    public static Share PlateSplitSpread { get; } = new(0.1);
    public static Share DefaultSplitSpread { get; } = new(0.25);

    /// <summary>A head control is at work where its setting lies over what the weather alone would give by more than this, 3.6 degF: common practice.</summary>
    public static TemperatureDifference ControlAtWork { get; } = new(2);

    /// <summary>Without a receiver nothing flattens the subcooling: what sound plants show then differs by 5 degF. Common practice.</summary>
    public static TemperatureDifference NoReceiverSpread { get; } = new(3);

    /// <summary>Smallest TD the air's fall is set against, 1.8 degF: under it instrument error is as large.</summary>
    public static TemperatureDifference LeastTdForAir { get; } = new(1);

    /// <summary>Line drop between bulb and the unit's gauge, about 2 degF of saturation: ASHRAE Handbook-Refrigeration, from memory.</summary>
    public static TemperatureDifference SuctionLineDrop { get; } = new(2 / 1.8);

    /// <summary>What that drop is uncertain by.</summary>
    public static TemperatureDifference SuctionLineDropSpread { get; } = new(0.5 / 1.8);

    /// <summary>Box temperature a cooler and a freezer are run at where no setpoint is known: common practice.</summary>
    public static CelsiusTemperature CoolerBox { get; } = new(2);
    public static CelsiusTemperature FreezerBox { get; } = new(-20);

    /// <summary>A setpoint under this is a freezer's, 18 degF: common practice.</summary>
    public static CelsiusTemperature ColdestCoolerSetpoint { get; } = new(-8);

    /// <summary>Warmest a cooler may let its product become, 41 degF / 5 degC: FDA Food Code 3-501.16.</summary>
    public static CelsiusTemperature WarmestCooler { get; } = new(5);

    /// <summary>Warmest a freezer's box becomes before the control calls, 3 degF: a setting of 0 degF and the usual differential. Common practice.</summary>
    public static CelsiusTemperature WarmestFreezer { get; } = new(-29 / 1.8);

    /// <summary>Widest usual control differential, 6 degF: common practice.</summary>
    public static TemperatureDifference WidestDifferential { get; } = new(6 / 1.8);

    /// <summary>Usual control differential where none is known, 3 degF: common practice.</summary>
    public static TemperatureDifference Differential { get; } = new(3 / 1.8);
}
