namespace Assistant.Trade.Rules.Evidence;

/// <summary>
/// The defaults a site's record may override. Temperatures in degC, differences in K. Sources stand beside each; "common practice"
/// where there is no better one.
/// </summary>
internal static class TradeValues
{
    /// <summary>Superheat at the bulb of a cooler, middle of 8 to 12 degF: common practice.</summary>
    public const double CoolerSuperheat = 10 / 1.8;

    /// <summary>Superheat at the bulb of a freezer, middle of 6 to 8 degF: common practice.</summary>
    public const double FreezerSuperheat = 7 / 1.8;

    /// <summary>Evaporator TD of a walk-in, 10 degF of 8 to 12: ASHRAE Handbook-Refrigeration, from memory.</summary>
    public const double EvaporatorTd = 10 / 1.8;

    /// <summary>What a TD unknown from the record may differ by from the default.</summary>
    public const double EvaporatorTdSpread = 0.25;

    /// <summary>Condenser split of a cooler's air-cooled condenser, 25 of 20 to 30 degF: common practice.</summary>
    public const double CoolerSplit = 25 / 1.8;

    /// <summary>Condenser split of a freezer's, between the 10 to 15 degF of a remote condenser and the 20 of a unit: common practice.</summary>
    public const double FreezerSplit = 18 / 1.8;

    /// <summary>Usual setting of a head pressure control, 77 to 91 degF of condensing: common practice ("90 less 30" is the winter reckoning).</summary>
    public const double HeadSetting = 29;

    /// <summary>What a setting unknown from the record may differ by.</summary>
    public const double HeadSettingSpread = 4;

    /// <summary>Line drop between bulb and the unit's gauge, about 2 degF of saturation: ASHRAE Handbook-Refrigeration, from memory.</summary>
    public const double SuctionLineDrop = 2 / 1.8;

    /// <summary>What that drop is uncertain by.</summary>
    public const double SuctionLineDropSpread = 0.5 / 1.8;

    /// <summary>Box temperature a cooler and a freezer are run at where no setpoint is known: common practice.</summary>
    public const double CoolerBox = 2;
    public const double FreezerBox = -20;

    /// <summary>Warmest a cooler may let its product become, 41 degF / 5 degC: FDA Food Code 3-501.16.</summary>
    public const double WarmestCooler = 5;

    /// <summary>Warmest a freezer's box should become before the control calls, 5 degF: common practice.</summary>
    public const double WarmestFreezer = -15;

    /// <summary>Widest usual control differential, 6 degF: common practice.</summary>
    public const double WidestDifferential = 6 / 1.8;

    /// <summary>Usual control differential where none is known, 3 degF: common practice.</summary>
    public const double Differential = 3 / 1.8;

    /// <summary>Two thermometers further apart than 2 degF are settled before anything else: common practice.</summary>
    public const double ThermometersApart = 2 / 1.8;

    /// <summary>Bulb at a refrigerant's glide below which a setting's dew or bubble basis does not matter, K.</summary>
    public const double GlideThatMatters = 1 / 1.8;
}
