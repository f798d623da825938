using Assistant.Trade.Quantities;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>What a sound plant shows speaks for no fault, and what a fault's own working explains is no contradiction. Invented calls, written by hand: common practice.</summary>
public class SoundPlantTests
{
    // R22 at 6000 ft: TD 10, split 24 and superheat 7 degF, everything where it belongs.
    private static readonly string[] Sound =
    [
        "refrigerant R22", "application cooler", "altitude 6000 ft", "design_evaporator_td 10 degF", "design_condenser_split 25 degF", "setpoint 36 degF",
        "differential 3 degF", "box_temperature 38 degF", "box_temperature_check 38 degF", "calling_for_cooling yes", "evaporator_fans all", "coil_ice none",
        "condenser_coil clean", "condenser_fans all", "ambient_temperature 80 degF", "compressor running", "suction_pressure 53 psig",
        "suction_pressure_at_evaporator 55 psig", "discharge_pressure 211 psig", "suction_line_temperature_at_bulb 35 degF", "liquid_line_temperature 97 degF",
        "sight_glass clear",
    ];

    // R404A held at 112 degF of condensing on a day of 60: the valve passes hot gas, so the condenser is left cold and the liquid line is hot.
    private static readonly string[] Bypassing =
    [
        "refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "head_pressure_control valve", "head_pressure_control_setting 90 degF",
        "setpoint 36 degF", "differential 3 degF", "box_temperature 39 degF", "calling_for_cooling yes", "condenser_coil clean", "condenser_fans all",
        "ambient_temperature 60 degF", "compressor running", "suction_pressure 65 psig", "discharge_pressure 278 psig", "condenser_outlet_temperature 72 degF",
        "liquid_line_temperature 110 degF", "suction_line_temperature_at_bulb 35 degF", "sight_glass clear", "high_side_standing_pressure 126 psig",
    ];

    private static readonly string[] WarmAndCalling =
        ["application freezer", "setpoint -10 degF", "differential 4 degF", "box_temperature 12 degF", "calling_for_cooling yes", "evaporator_fans all"];

    private static readonly string[] RestingWarm =
    [
        "refrigerant R134a", "application cooler", "setpoint 3 degC", "differential 2 K", "box_temperature 12 degC", "box_temperature_check 12 degC",
        "calling_for_cooling no", "defrost_active no", "solenoid_energised no", "compressor off", "suction_pressure 0.9 bar", "discharge_pressure 5.07 bar",
        "ambient_temperature 22 degC",
    ];

    [Fact]
    public void A_sound_plant_that_holds_its_room_is_likely_sound()
    {
        var first = First(Sound);

        Assert.Equal((FaultCode.NoFault, Standing.Likely), (first.Code, first.Standing));
    }

    [Fact]
    public void The_same_readings_with_a_room_that_does_not_come_down_are_not_called_likely_sound() =>
        Assert.DoesNotContain(
            Assessor.Assess(FactsOf.Visit([.. Sound.Where(l => !l.StartsWith("box_", StringComparison.Ordinal)), "box_temperature 43 degF", "box_temperature_check 43 degF"])).Findings,
            f => f.Code == FaultCode.NoFault && f.Standing <= Standing.Likely);

    [Fact]
    public void Hot_gas_past_a_cold_condenser_is_the_bypass_and_no_misreading()
    {
        var assessment = Assessor.Assess(FactsOf.Visit(Bypassing));

        Assert.Empty(assessment.Rejected);
        Assert.Equal(FaultCode.HeadPressureControlHigh, assessment.Findings[0].Code);
    }

    [Fact]
    public void A_warm_room_that_calls_tells_nothing_yet() => Assert.Equal(FaultCode.NotEnoughEvidence, First(WarmAndCalling).Code);

    [Fact]
    public void A_setting_that_suits_what_is_stored_is_no_fault_of_the_control() =>
        Assert.Equal(
            FaultCode.NotEnoughEvidence,
            First(["application cooler", "setpoint 4 degC", "differential 2 K", "box_temperature 9 degC", "box_temperature_check 9 degC", "calling_for_cooling yes", "evaporator_fans all", "coil_ice none", "door_condition good"]).Code);

    [Fact]
    public void A_blocked_coil_in_a_warm_room_is_enough_to_name_the_ice() =>
        Assert.Equal(FaultCode.CoilIced, First([.. WarmAndCalling, "coil_ice blocked"]).Code);

    [Fact]
    public void A_warm_room_at_rest_without_a_call_wants_the_call_and_not_the_liquid() =>
        Assert.Equal(FaultCode.NoCallForCooling, First(RestingWarm).Code);

    [Fact]
    public void Of_two_faults_that_fit_alike_the_proven_one_is_first() =>
        Assert.Equal(
            FaultCode.ExpansionValveStarving,
            First(["refrigerant R22", "application cooler", "superheat 30 degF", "subcooling 9 degF", "sight_glass clear", "evaporator_fans all", "compressor running", "calling_for_cooling yes"]).Code);

    [Fact]
    public void A_split_said_outright_is_spoken_of_in_numbers_that_were_given()
    {
        var assessment = Assessor.Assess(FactsOf.Visit(["refrigerant R407A", "application cooler", "superheat 8 degF", "subcooling 7 degF", "condenser_split 24 degF", "design_condenser_split 25 degF", "saturated_suction_temperature 28 degF", "evaporator_air_in 38 degF", "compressor running"]));
        var numbers = assessment.Findings.SelectMany(f => f.Because.Concat(f.Against)).SelectMany(r => r.Parts).Select(p => p.Amount).OfType<Amount>().ToList();

        Assert.NotEmpty(numbers);
        Assert.DoesNotContain(numbers, a => double.IsNaN(a.Canonical));
    }

    private static Finding First(string[] lines) => Assessor.Assess(FactsOf.Visit(lines)).Findings[0];
}
