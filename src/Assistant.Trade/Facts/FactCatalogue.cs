using System.Collections.Frozen;
using static Assistant.Trade.Facts.FactKind;

namespace Assistant.Trade.Facts;

/// <summary>Every fact the product knows, by name.</summary>
public static class FactCatalogue
{
    public static Fact Refrigerant { get; } = new("refrigerant", Choice, Place.Record);
    public static Fact Application { get; } = new("application", Choice, Place.Record, "cooler", "freezer");
    public static Fact Altitude { get; } = new("altitude", FactKind.Length, Place.Record);
    public static Fact FullCharge { get; } = new("full_charge", Mass, Place.Record);
    public static Fact DesignCondenserSplit { get; } = new("design_condenser_split", TemperatureDifference, Place.Record);
    public static Fact DesignEvaporatorTd { get; } = new("design_evaporator_td", TemperatureDifference, Place.Record);
    public static Fact HeadPressureControl { get; } = new("head_pressure_control", Choice, Place.Record, "none", "valve", "fan-cycling");
    public static Fact HeadPressureControlSetting { get; } = new("head_pressure_control_setting", TemperatureOrPressure, Place.Record);
    public static Fact SaturationBasis { get; } = new("saturation_basis", Choice, Place.Record, "dew", "bubble");
    public static Fact CondenserVolume { get; } = new("condenser_volume", Volume, Place.Record);
    public static Fact ReceiverVolume { get; } = new("receiver_volume", Volume, Place.Record);
    public static Fact ColdestDesignAmbient { get; } = new("coldest_design_ambient", Temperature, Place.Record);
    public static Fact LowSideDesignPressure { get; } = new("low_side_design_pressure", Pressure, Place.Record);
    public static Fact MeteringDevice { get; } = new("metering_device", Choice, Place.Room, "txv", "eev", "fixed");
    public static Fact LiquidReceiver { get; } = new("liquid_receiver", YesNo, Place.Unit);

    public static Fact BoxTemperature { get; } = new("box_temperature", Temperature, Place.Room);
    public static Fact BoxTemperatureCheck { get; } = new("box_temperature_check", Temperature, Place.Room);
    public static Fact WrongThermometer { get; } = new("wrong_thermometer", Choice, Place.Room, "display", "second");
    public static Fact Setpoint { get; } = new("setpoint", Temperature, Place.Room);
    public static Fact Differential { get; } = new("differential", TemperatureDifference, Place.Room);
    public static Fact CallingForCooling { get; } = new("calling_for_cooling", YesNo, Place.Room);
    public static Fact EvaporatorFans { get; } = new("evaporator_fans", Choice, Place.Room, "all", "some", "none");
    public static Fact CoilIce { get; } = new("coil_ice", Choice, Place.Room, "none", "light", "distributor-end", "blocked");
    public static Fact DoorCondition { get; } = new("door_condition", Choice, Place.Room, "good", "leaking", "left-open");
    public static Fact EvaporatorAirIn { get; } = new("evaporator_air_in", Temperature, Place.Room);
    public static Fact EvaporatorAirOut { get; } = new("evaporator_air_out", Temperature, Place.Room);
    public static Fact LiquidLineFeel { get; } = new("liquid_line_feel", Choice, Place.Room, "hot", "warm", "cool", "cold");
    public static Fact LiquidLineTemperatureAtCoil { get; } = new("liquid_line_temperature_at_coil", Temperature, Place.Room);
    public static Fact SuctionLineTemperatureAtBulb { get; } = new("suction_line_temperature_at_bulb", Temperature, Place.Room);
    public static Fact SuctionPressureAtEvaporator { get; } = new("suction_pressure_at_evaporator", Pressure, Place.Room);
    public static Fact SolenoidEnergised { get; } = new("solenoid_energised", YesNo, Place.Room);
    public static Fact DefrostActive { get; } = new("defrost_active", YesNo, Place.Room);
    public static Fact PullingDown { get; } = new("pulling_down", YesNo, Place.Anywhere);
    public static Fact ProductTemperature { get; } = new("product_temperature", Temperature, Place.Room);

    public static Fact AmbientTemperature { get; } = new("ambient_temperature", Temperature, Place.Unit);
    public static Fact Compressor { get; } = new("compressor", Choice, Place.Unit, "running", "off", "short-cycling");
    public static Fact CondenserFans { get; } = new("condenser_fans", Choice, Place.Unit, "all", "some", "none", "cycling");
    public static Fact CondenserCoil { get; } = new("condenser_coil", Choice, Place.Unit, "clean", "dirty", "snowed");
    public static Fact SightGlass { get; } = new("sight_glass", Choice, Place.Unit, "clear", "flashing", "empty");
    public static Fact SightGlassMoisture { get; } = new("sight_glass_moisture", Choice, Place.Unit, "dry", "wet");
    public static Fact SuctionPressure { get; } = new("suction_pressure", Pressure, Place.Unit);
    public static Fact DischargePressure { get; } = new("discharge_pressure", Pressure, Place.Unit);
    public static Fact LiquidPressure { get; } = new("liquid_pressure", Pressure, Place.Unit);
    public static Fact SuctionLineTemperatureAtCompressor { get; } = new("suction_line_temperature_at_compressor", Temperature, Place.Unit);
    public static Fact LiquidLineTemperature { get; } = new("liquid_line_temperature", Temperature, Place.Unit);
    public static Fact CondenserOutletTemperature { get; } = new("condenser_outlet_temperature", Temperature, Place.Unit);
    public static Fact DischargeLineTemperature { get; } = new("discharge_line_temperature", Temperature, Place.Unit);
    public static Fact DrierInletTemperature { get; } = new("drier_inlet_temperature", Temperature, Place.Unit);
    public static Fact DrierOutletTemperature { get; } = new("drier_outlet_temperature", Temperature, Place.Unit);
    public static Fact CompressorCurrent { get; } = new("compressor_current", Current, Place.Unit);
    public static Fact RatedCurrent { get; } = new("rated_current", Current, Place.Unit);
    public static Fact StandingPressure { get; } = new("standing_pressure", Pressure, Place.Unit);
    public static Fact HighSideStandingPressure { get; } = new("high_side_standing_pressure", Pressure, Place.Unit);
    public static Fact SupplyVoltage { get; } = new("supply_voltage", Voltage, Place.Unit);
    public static Fact OilLevel { get; } = new("oil_level", Choice, Place.Unit, "low", "normal", "high");

    public static Fact SaturatedSuctionTemperature { get; } = new("saturated_suction_temperature", Temperature, Place.Unit);
    public static Fact SaturatedCondensingTemperature { get; } = new("saturated_condensing_temperature", Temperature, Place.Unit);
    public static Fact CondenserSplit { get; } = new("condenser_split", TemperatureDifference, Place.Unit);
    public static Fact Superheat { get; } = new("superheat", TemperatureDifference, Place.Room);
    public static Fact Subcooling { get; } = new("subcooling", TemperatureDifference, Place.Unit);

    public static Fact CylinderWeight { get; } = new("cylinder_weight", Mass, Place.Scale);
    public static Fact CylinderTare { get; } = new("cylinder_tare", Mass, Place.Scale);
    public static Fact CylinderTemperature { get; } = new("cylinder_temperature", Temperature, Place.Scale);
    public static Fact ChargeAdded { get; } = new("charge_added", Mass, Place.Scale);
    public static Fact ChargeRecovered { get; } = new("charge_recovered", Mass, Place.Scale);

    public static Fact TestPressure { get; } = new("test_pressure", Pressure, Place.Unit);
    public static Fact TestGasTemperature { get; } = new("test_gas_temperature", Temperature, Place.Unit);
    public static Fact VacuumLevel { get; } = new("vacuum", Vacuum, Place.Unit);
    public static Fact HotWorkAllowed { get; } = new("hot_work_allowed", YesNo, Place.Anywhere);
    public static Fact ElapsedTime { get; } = new("elapsed_time", Time, Place.Anywhere);

    /// <summary>Every fact, in the contract's order.</summary>
    public static IReadOnlyList<Fact> All { get; } =
    [
        Refrigerant, Application, Altitude, FullCharge, DesignCondenserSplit, DesignEvaporatorTd, HeadPressureControl,
        HeadPressureControlSetting, SaturationBasis, CondenserVolume, ReceiverVolume, ColdestDesignAmbient,
        LowSideDesignPressure, MeteringDevice, LiquidReceiver, BoxTemperature, BoxTemperatureCheck, WrongThermometer, Setpoint, Differential,
        CallingForCooling, EvaporatorFans, CoilIce, DoorCondition, EvaporatorAirIn, EvaporatorAirOut, LiquidLineFeel,
        LiquidLineTemperatureAtCoil, SuctionLineTemperatureAtBulb, SuctionPressureAtEvaporator, SolenoidEnergised,
        DefrostActive, AmbientTemperature, Compressor, CondenserFans, CondenserCoil, SightGlass, SightGlassMoisture,
        SuctionPressure, DischargePressure, LiquidPressure, SuctionLineTemperatureAtCompressor, LiquidLineTemperature,
        CondenserOutletTemperature, SaturatedSuctionTemperature, SaturatedCondensingTemperature, CondenserSplit,
        DischargeLineTemperature, DrierInletTemperature, DrierOutletTemperature, CompressorCurrent, RatedCurrent,
        StandingPressure, HighSideStandingPressure, SupplyVoltage, OilLevel, CylinderWeight, CylinderTare,
        CylinderTemperature, ChargeAdded, ChargeRecovered, TestPressure, TestGasTemperature, VacuumLevel,
        ProductTemperature, HotWorkAllowed, Superheat, Subcooling, ElapsedTime, PullingDown,
    ];

    private static readonly FrozenDictionary<string, Fact> ByName = All.ToFrozenDictionary(f => f.Name, StringComparer.Ordinal);

    /// <summary>The fact of that name, or null.</summary>
    public static Fact? Find(string name) => ByName.GetValueOrDefault(name);
}
