using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>The same fault by another picture than its usual one: at rest, or with another kind of control. Pressures are from the embedded tables, rounded as a gauge is read.</summary>
public class OtherPictureTests
{
    // R449A: 18.7 bar is 47 degC of condensing (dew), 33 K over the air.
    private static readonly string[] FansHeldOff =
    [
        "refrigerant R449A", "application cooler", "setpoint 3 degC", "compressor running", "calling_for_cooling yes", "head_pressure_control fan-cycling",
        "head_pressure_control_setting 30 degC", "ambient_temperature 14 degC", "discharge_pressure 18.7 bar", "liquid_line_temperature 38.4 degC",
        "sight_glass clear", "condenser_coil clean", "condenser_fans cycling",
    ];

    // R22 at -10 degC outside: 5 bar is 6 degC of condensing, 1.84 bar -16 degC of suction.
    private static readonly string[] NothingHoldsTheHead =
    [
        "refrigerant R22", "application cooler", "setpoint 3 degC", "differential 2 K", "box_temperature 8 degC", "calling_for_cooling yes", "compressor running",
        "head_pressure_control none", "ambient_temperature -10 degC", "suction_pressure 1.84 bar", "discharge_pressure 5 bar", "suction_line_temperature_at_bulb 2 degC",
        "liquid_line_temperature 2 degC", "sight_glass clear", "evaporator_fans all", "coil_ice none", "condenser_coil clean", "condenser_fans all",
    ];

    // R404A at 72 degF stands at 153 psig while any liquid is left.
    private static readonly string[] Empty =
    [
        "refrigerant R404A", "application cooler", "compressor off", "calling_for_cooling yes", "sight_glass empty", "ambient_temperature 72 degF",
        "high_side_standing_pressure 45 psig", "standing_pressure 45 psig", "box_temperature 64 degF", "setpoint 36 degF",
    ];

    private static readonly string[] Satisfied =
    [
        "application cooler", "setpoint 36 degF", "differential 4 degF", "box_temperature 35 degF", "box_temperature_check 36 degF", "calling_for_cooling no", "compressor off",
        "evaporator_fans all", "coil_ice none", "door_condition good",
    ];

    // R448A: 4.09 bar is 0 degC of suction, 17.8 bar 45 degC of condensing, 16 K over the air.
    private static readonly string[] WarmGoods =
    [
        "refrigerant R448A", "application cooler", "setpoint 3 degC", "differential 2 K", "box_temperature 9 degC", "product_temperature 19 degC", "door_condition good",
        "calling_for_cooling yes", "compressor running", "suction_pressure 4.09 bar", "discharge_pressure 17.8 bar", "suction_line_temperature_at_bulb 6.5 degC",
        "liquid_line_temperature 36 degC", "ambient_temperature 29 degC", "design_condenser_split 14 K", "sight_glass clear", "evaporator_fans all", "coil_ice none",
        "condenser_coil clean", "condenser_fans all",
    ];

    [Fact]
    public void Fans_held_off_with_the_head_far_over_the_setting_are_the_control_and_neither_dirt_nor_charge()
    {
        var first = First(FansHeldOff);

        Assert.Equal(FaultCode.HeadPressureControlHigh, first.Code);
        Assert.Contains(first.Because, r => r.Key == "reason.condenser-fans-cycling");
    }

    [Fact]
    public void With_fans_running_the_same_head_is_not_laid_to_the_control() =>
        Assert.NotEqual(FaultCode.HeadPressureControlHigh, First([.. FansHeldOff.Where(l => !l.StartsWith("condenser_fans", StringComparison.Ordinal)), "condenser_fans all"]).Code);

    [Fact]
    public void Without_any_control_a_cold_day_leaves_the_valve_unfed() => Assert.Equal(FaultCode.HeadPressureControlLow, First(NothingHoldsTheHead).Code);

    [Fact]
    public void Without_any_control_a_room_that_is_held_has_no_fault_of_the_head() =>
        Assert.NotEqual(FaultCode.HeadPressureControlLow, First([.. NothingHoldsTheHead.Where(l => !l.StartsWith("box_", StringComparison.Ordinal)), "box_temperature 3 degC"]).Code);

    [Fact]
    public void A_plant_at_rest_far_under_saturation_has_no_liquid_left()
    {
        var assessment = Assessor.Assess(FactsOf.Visit(Empty));

        Assert.Empty(assessment.Rejected);
        Assert.Equal(FaultCode.Undercharge, assessment.Findings[0].Code);
        Assert.Contains(assessment.Findings[0].Because, r => r.Key == "reason.equalised-over-coldest-low");
    }

    [Fact]
    public void Both_gauges_alike_at_rest_say_the_same_as_a_standing_pressure() =>
        Assert.Equal(
            FaultCode.Undercharge,
            First(["refrigerant R404A", "compressor off", "calling_for_cooling yes", "ambient_temperature 72 degF", "box_temperature 64 degF", "suction_pressure 44 psig", "discharge_pressure 45 psig"]).Code);

    [Fact]
    public void A_plant_at_rest_at_the_temperature_of_its_coldest_place_still_has_liquid() =>
        Assert.Equal(
            FaultCode.CompressorNotRunning,
            First(["refrigerant R404A", "compressor off", "calling_for_cooling yes", "ambient_temperature 72 degF", "box_temperature 64 degF", "suction_pressure 132 psig", "discharge_pressure 133 psig"]).Code);

    [Fact]
    public void A_standing_pressure_that_nothing_else_bears_out_is_questioned() =>
        Assert.Contains(
            Assessor.Assess(FactsOf.Visit("refrigerant R404A", "compressor running", "ambient_temperature 72 degF", "sight_glass clear", "high_side_standing_pressure 45 psig")).Rejected,
            r => r.Value.Fact == FactCatalogue.HighSideStandingPressure);

    [Fact]
    public void A_satisfied_control_rightly_rests() => Assert.Equal(FaultCode.NoFault, First(Satisfied).Code);

    [Fact]
    public void A_room_that_warms_while_nothing_calls_is_no_satisfied_control() =>
        Assert.Equal(
            FaultCode.NoCallForCooling,
            First([.. Satisfied.Where(l => !l.StartsWith("box_", StringComparison.Ordinal)), "box_temperature 46 degF", "box_temperature_check 46 degF"]).Code);

    [Fact]
    public void Goods_warmer_than_the_air_came_in_warm()
    {
        var first = First(WarmGoods);

        Assert.Equal(FaultCode.ExcessLoad, first.Code);
        Assert.Contains(first.Because, r => r.Key == "reason.product-over-box-high");
    }

    [Fact]
    public void Goods_colder_than_the_air_of_a_failing_room_are_no_load() =>
        Assert.NotEqual(FaultCode.ExcessLoad, First([.. WarmGoods.Where(l => !l.StartsWith("product", StringComparison.Ordinal)), "product_temperature 6 degC"]).Code);

    private static Finding First(string[] lines) => Assessor.Assess(FactsOf.Visit(lines)).Findings[0];
}
