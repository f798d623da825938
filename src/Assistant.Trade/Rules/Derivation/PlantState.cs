using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;

namespace Assistant.Trade.Rules.Derivation;

/// <summary>The facts as the sums need them: absolute pressures, saturation temperatures with their instrument errors, and the plant's design values or their defaults.</summary>
internal sealed class PlantState
{
    private readonly FactSet facts;

    public PlantState(FactSet facts)
    {
        this.facts = facts;
        Refrigerant = RefrigerantLibrary.Find(facts.Word(FactCatalogue.Refrigerant));
        IsFreezer = facts.Is(FactCatalogue.Application, "freezer") || (facts.Word(FactCatalogue.Application) is null && Degrees(FactCatalogue.Setpoint) < TradeValues.ColdestCoolerSetpoint.Degrees);
        SuctionPressure = facts.Pressure(FactCatalogue.SuctionPressure);
        EvaporatorPressure = facts.Pressure(FactCatalogue.SuctionPressureAtEvaporator);
        DischargePressure = facts.Pressure(FactCatalogue.DischargePressure);
        LiquidPressure = facts.Pressure(FactCatalogue.LiquidPressure);
        Suction = Dew(SuctionPressure, FactCatalogue.SaturatedSuctionTemperature);
        Evaporator = Dew(EvaporatorPressure, null);
        Condensing = Dew(DischargePressure, FactCatalogue.SaturatedCondensingTemperature);
        Liquid = Bubble();
        BoxAir = Air();
        Ambient = Temperature(FactCatalogue.AmbientTemperature);
        Rests = facts.Is(FactCatalogue.Compressor, "off");
        DesignSplit = facts.Difference(FactCatalogue.DesignCondenserSplit)?.Kelvins ?? (IsFreezer ? TradeValues.FreezerSplit : TradeValues.CoolerSplit).Kelvins;
        DesignTd = facts.Difference(FactCatalogue.DesignEvaporatorTd)?.Kelvins ?? (IsFreezer ? TradeValues.FreezerTd : TradeValues.CoolerTd).Kelvins;
        Setting = HeadSetting();
    }

    public FactSet Facts => facts;

    public Refrigerant? Refrigerant { get; }

    public bool IsFreezer { get; }

    /// <summary>The compressor stands still: what the lines read then says nothing of superheat, split or TD.</summary>
    public bool Rests { get; }

    /// <summary>The room is known to be on its way down: something was just put right, or refrigerant was just added.</summary>
    public bool IsPullingDown => facts.Is(FactCatalogue.PullingDown, "yes") || facts.Has(FactCatalogue.ChargeAdded);

    public AbsolutePressure? SuctionPressure { get; }

    public AbsolutePressure? EvaporatorPressure { get; }

    public AbsolutePressure? DischargePressure { get; }

    public AbsolutePressure? LiquidPressure { get; }

    /// <summary>Dew temperature at the unit's suction gauge, degC.</summary>
    public Measure Suction { get; }

    /// <summary>Dew temperature at the evaporator's own gauge, degC.</summary>
    public Measure Evaporator { get; }

    /// <summary>Dew temperature at the discharge gauge, degC.</summary>
    public Measure Condensing { get; }

    /// <summary>Bubble temperature of the liquid, from its own gauge where there is one, degC.</summary>
    public Measure Liquid { get; }

    public Measure BoxAir { get; }

    public Measure Ambient { get; }

    /// <summary>The colder of room and ambient, degC: where a plant at rest gathers its liquid.</summary>
    public Measure Coldest => !Ambient.IsKnown || BoxAir.Value < Ambient.Value ? BoxAir : Ambient;

    public double DesignSplit { get; }

    public double DesignTd { get; }

    /// <summary>K: the middle of the usual superheat at the bulb.</summary>
    public double UsualSuperheat => (IsFreezer ? TradeValues.FreezerSuperheat : TradeValues.CoolerSuperheat).Kelvins;

    /// <summary>degC: the warmest the control may let the box become for what is stored.</summary>
    public double WarmestBox => (IsFreezer ? TradeValues.WarmestFreezer : TradeValues.WarmestCooler).Degrees;

    /// <summary>The head control's setting as a dew temperature, degC; the usual one, widely, where the control is unknown or its setting is; unknown where there is no control.</summary>
    public Measure Setting { get; }

    /// <summary>degC: what a head control is usually set to, with the spread of that.</summary>
    public static Measure UsualSetting { get; } = new(TradeValues.HeadSetting.Degrees, TradeValues.HeadSettingSpread.Kelvins);

    public double? Degrees(Fact fact) => facts.Temperature(fact)?.Degrees;

    public Measure Temperature(Fact fact) => Degrees(fact) is { } degrees ? new(degrees, Instruments.TemperatureKelvins) : Measure.Unknown;

    public Measure DewOf(AbsolutePressure? pressure)
    {
        if (pressure is not { } absolute || Refrigerant is null || !Refrigerant.Saturation.TryDewTemperature(absolute, out var dew))
        {
            return Measure.Unknown;
        }

        var above = new AbsolutePressure(absolute.Pascals + Instruments.PressurePascals);
        return new(dew.Degrees, Refrigerant.Saturation.TryDewTemperature(above, out var warmer) ? warmer.Degrees - dew.Degrees : 0);
    }

    public Measure BubbleOf(AbsolutePressure? pressure)
    {
        if (pressure is not { } absolute || Refrigerant is null || !Refrigerant.Saturation.TryBubbleTemperature(absolute, out var bubble))
        {
            return Measure.Unknown;
        }

        var above = new AbsolutePressure(absolute.Pascals + Instruments.PressurePascals);
        return new(bubble.Degrees, Refrigerant.Saturation.TryBubbleTemperature(above, out var warmer) ? warmer.Degrees - bubble.Degrees : 0);
    }

    /// <summary>
    /// The second thermometer, degC. In a room on its way down a warmer one was read earlier, as nobody reads both each time: it is no
    /// witness of the air as it is now.
    /// </summary>
    public Measure SecondThermometer =>
        Temperature(FactCatalogue.BoxTemperatureCheck) is var second && IsPullingDown && second.Value > Temperature(FactCatalogue.BoxTemperature).Value ? Measure.Unknown : second;

    // The air on the coil; else the room's display, unless a second thermometer in the same air gainsays it.
    private Measure Air()
    {
        var (on, shown, second) = (Temperature(FactCatalogue.EvaporatorAirIn), Temperature(FactCatalogue.BoxTemperature), SecondThermometer);
        return on.IsKnown ? on : Math.Abs(shown.Value - second.Value) > RoomLimits.ThermometersApart.Kelvins ? second : shown;
    }

    private Measure Dew(AbsolutePressure? pressure, Fact? saidOutright)
    {
        var fromGauge = DewOf(pressure);
        return fromGauge.IsKnown || saidOutright is null ? fromGauge : Temperature(saidOutright);
    }

    // A condensing temperature said outright is a dew temperature: its pressure gives the bubble point.
    private Measure Bubble()
    {
        var fromGauge = BubbleOf(LiquidPressure ?? DischargePressure);
        if (fromGauge.IsKnown || Refrigerant is null || !Condensing.IsKnown
            || !Refrigerant.Saturation.TryDewPressure(new(Condensing.Value), out var pressure))
        {
            return fromGauge;
        }

        return BubbleOf(pressure) with { Error = Condensing.Error };
    }

    private Measure HeadSetting()
    {
        if (facts.Is(FactCatalogue.HeadPressureControl, "none"))
        {
            return Measure.Unknown;
        }

        if (facts.Pressure(FactCatalogue.HeadPressureControlSetting) is { } pressure)
        {
            return DewOf(pressure) with { Error = 0 };
        }

        if (Degrees(FactCatalogue.HeadPressureControlSetting) is not { } degrees)
        {
            return UsualSetting;
        }

        var bubbleSaid = facts.Is(FactCatalogue.SaturationBasis, "bubble");
        if (!bubbleSaid || Refrigerant is null)
        {
            return new(degrees, 0);
        }

        return Refrigerant.Saturation.TryBubblePressure(new(degrees), out var held) ? DewOf(held) with { Error = 0 } : Measure.Unknown;
    }
}
