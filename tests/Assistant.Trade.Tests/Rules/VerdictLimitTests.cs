using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>How far a verdict may go, and what is asked next.</summary>
public class VerdictLimitTests
{
    // R449A: 24 bar is 57 degC of condensing (dew), 26 K over the air, at a plate of 12.
    private static readonly string[] PackedWithFluff =
    [
        "refrigerant R449A", "application cooler", "design_condenser_split 12 K", "box_temperature 9 degC", "box_temperature_check 9.2 degC", "setpoint 4 degC", "differential 2 K",
        "calling_for_cooling yes", "evaporator_fans all", "coil_ice none", "door_condition good", "ambient_temperature 31 degC", "compressor running", "condenser_fans all",
        "discharge_pressure 24 bar", "condenser_coil dirty",
    ];

    // The same plant cleaned: 17 bar is 43 degC of condensing, 4.2 bar 0.6 degC of suction; the room is still at 9.
    private static readonly string[] Cleaned =
    [
        .. PackedWithFluff.Where(l => !l.StartsWith("discharge", StringComparison.Ordinal) && !l.StartsWith("condenser_coil", StringComparison.Ordinal)), "discharge_pressure 17 bar",
        "condenser_coil clean", "sight_glass clear", "suction_pressure 4.2 bar", "liquid_line_temperature 36 degC", "suction_line_temperature_at_compressor 12 degC",
    ];

    // R448A at 36.5 degC of condensing (dew) on a day of 10: 6.5 K over a setting of 30 by dew, a bypass without doubt; by bubble the setting is 35 by dew, and the head where it belongs.
    private static readonly string[] BypassingByDew =
    [
        "refrigerant R448A", "application cooler", "design_condenser_split 14 K", "head_pressure_control valve", "head_pressure_control_setting 30 degC", "ambient_temperature 10 degC",
        "compressor running", "condenser_coil clean", "condenser_fans all", "calling_for_cooling yes", "coil_ice none", "evaporator_fans all", "sight_glass flashing",
        "saturated_condensing_temperature 36.5 degC", "subcooling 0 K",
    ];

    // R448A by a setting of 30 degC: 12.1 bar if that is dew, 14.1 if bubble. The head stands at 11.6 bar, 29 degC dew, with mild air.
    private static readonly string[] BasisUnknown =
    [
        "refrigerant R448A", "application cooler", "design_condenser_split 14 K", "head_pressure_control valve", "head_pressure_control_setting 30 degC", "ambient_temperature 2 degC",
        "compressor running", "condenser_coil clean", "condenser_fans all", "calling_for_cooling yes", "coil_ice none", "evaporator_fans all", "box_temperature 7 degC", "setpoint 3 degC",
        "sight_glass clear", "discharge_pressure 11.6 bar", "liquid_line_temperature 21 degC", "suction_pressure 2.7 bar", "suction_line_temperature_at_bulb 2 degC",
    ];

    [Fact]
    public void Twice_the_split_of_the_plate_behind_packed_dirt_is_established_before_anything_else_is_read() =>
        Assert.Equal((FaultCode.CondenserAirflow, Standing.Established), Leading(PackedWithFluff));

    [Fact]
    public void The_same_head_behind_a_clean_coil_establishes_nothing() =>
        Assert.NotEqual(Standing.Established, Leading([.. PackedWithFluff.Where(l => !l.StartsWith("condenser_coil", StringComparison.Ordinal)), "condenser_coil clean"]).Standing);

    [Fact]
    public void Dirt_with_the_subcooling_of_a_flooded_condenser_is_not_the_whole_story() =>
        Assert.NotEqual(Standing.Established, Leading([.. PackedWithFluff, "liquid_line_temperature 40 degC"]).Standing);

    [Fact]
    public void A_room_still_warm_after_a_repair_is_as_it_should_be()
    {
        var first = Assessor.Assess(FactsOf.Visit([.. Cleaned, "pulling_down yes"])).Findings[0];

        Assert.Equal((FaultCode.NoFault, Standing.Likely), (first.Code, first.Standing));
        Assert.Contains(first.Because, r => r.Key == "reason.pulling-down-yes");
    }

    [Fact]
    public void Refrigerant_just_added_explains_a_warm_room_as_well() => Assert.Equal(FaultCode.NoFault, Leading([.. Cleaned, "charge_added 1 kg"]).Code);

    [Fact]
    public void A_warm_room_without_such_a_reason_names_neither_a_sound_plant_nor_a_likely_fault()
    {
        var first = Assessor.Assess(FactsOf.Visit(Cleaned)).Findings[0];

        Assert.Equal(Standing.Possible, first.Standing);
    }

    [Fact]
    public void A_pull_down_excuses_the_room_and_no_reading() =>
        Assert.Equal(FaultCode.CondenserAirflow, Leading([.. PackedWithFluff, "pulling_down yes"]).Code);

    [Theory]
    [InlineData("setpoint 3 degC")]
    [InlineData("refrigerant R404A;box_temperature 8 degC;setpoint 3 degC")]
    [InlineData("setpoint 36 degF;differential 3 degF;calling_for_cooling yes")]
    public void A_setpoint_that_suits_names_no_fault(string facts) => Assert.Equal(FaultCode.NotEnoughEvidence, Leading(facts.Split(';')).Code);

    [Fact]
    public void Where_there_is_no_head_control_its_setting_is_never_asked()
    {
        var known = FactsOf.Visit("refrigerant R404A", "head_pressure_control none", "compressor running");
        for (var i = 0; i < 80 && Assessor.Assess(known, Refused).Next is { } next; i++)
        {
            Assert.NotEqual(FactCatalogue.HeadPressureControlSetting, next);
            Refused.Add(next);
        }

        Assert.NotEmpty(Refused);
    }

    private HashSet<Fact> Refused { get; } = [];

    [Fact]
    public void A_head_setting_in_degrees_on_a_blend_with_glide_is_asked_for_its_basis_where_that_decides()
    {
        var assessment = Assessor.Assess(FactsOf.Visit(BasisUnknown));

        Assert.Equal(FactCatalogue.SaturationBasis, assessment.Next);
        Assert.NotEqual(Standing.Established, assessment.Findings[0].Standing);
    }

    [Theory]
    [InlineData("saturation_basis bubble")]
    [InlineData("head_pressure_control_setting 175 psig")]
    [InlineData("refrigerant R404A")]
    [InlineData("head_pressure_control none")]
    public void The_basis_is_not_asked_where_it_is_known_or_does_not_matter(string change) =>
        Assert.NotEqual(FactCatalogue.SaturationBasis, Assessor.Assess(FactsOf.Visit(BasisUnknown).With(FactsOf.Value(change))).Next);

    [Theory]
    [InlineData(null, Standing.Likely)]
    [InlineData("saturation_basis dew", Standing.Established)]
    public void What_is_established_by_dew_alone_waits_for_the_basis(string? basis, Standing standing) =>
        Assert.Equal((FaultCode.HeadPressureControlHigh, standing), Leading(basis is null ? BypassingByDew : [.. BypassingByDew, basis]));

    [Fact]
    public void A_basis_that_can_not_be_had_is_not_asked_again() =>
        Assert.NotEqual(FactCatalogue.SaturationBasis, Assessor.Assess(FactsOf.Visit(BasisUnknown), new HashSet<Fact> { FactCatalogue.SaturationBasis }).Next);

    [Fact]
    public void Nothing_on_the_refrigerant_side_is_judged_through_ice() =>
        Assert.Equal(
            FaultCode.CoilIced,
            Leading(["refrigerant R448A", "application freezer", "setpoint -5 degF", "box_temperature 8 degF", "calling_for_cooling yes", "compressor running", "coil_ice blocked",
                "suction_pressure 6.2 psig", "suction_line_temperature_at_bulb 21 degF", "discharge_pressure 167 psig", "ambient_temperature 70 degF", "sight_glass clear"]).Code);

    [Theory]
    [InlineData("refrigerant R502;sight_glass flashing;compressor running", FaultCode.Undercharge)]
    [InlineData("refrigerant R502;suction_pressure 20 psig", FaultCode.NotEnoughEvidence)]
    [InlineData("refrigerant R502;coil_ice blocked", FaultCode.CoilIced)]
    public void A_refrigerant_without_a_table_is_said_and_what_is_seen_still_counts(string facts, FaultCode expected)
    {
        var first = Assessor.Assess(FactsOf.Visit(facts.Split(';'))).Findings[0];

        Assert.Equal(expected, first.Code);
        Assert.Contains(first.Because.Concat(first.Against), r => r.Key == "reason.outside-no-table");
    }

    [Fact]
    public void With_the_thermometers_apart_the_coil_is_judged_by_the_second_one()
    {
        // R404A: 49 psig is 15 degF of suction. By the display the TD would be nothing.
        var first = Leading(["refrigerant R404A", "application cooler", "compressor running", "box_temperature 18 degF", "box_temperature_check 35 degF", "suction_pressure 49 psig", "sight_glass clear"]);

        Assert.Equal(FaultCode.SensorError, first.Code);
    }

    [Theory]
    [InlineData("box_temperature 47 degF;setpoint 36 degF;calling_for_cooling yes")]
    [InlineData("application freezer;box_temperature 30 degF;setpoint -5 degF;calling_for_cooling yes;compressor running")]
    public void A_warm_room_alone_points_at_no_fault_of_the_machine(string facts) => Assert.Equal(FaultCode.NotEnoughEvidence, Leading(facts.Split(';')).Code);

    [Fact]
    public void A_room_that_has_warmed_for_hours_speaks_against_no_fault_that_takes_the_cooling_away() =>
        Assert.Equal(
            FaultCode.Undercharge,
            Leading(["refrigerant R448A", "application freezer", "setpoint -5 degF", "box_temperature 22 degF", "calling_for_cooling yes", "compressor running", "sight_glass empty",
                "suction_pressure 4 inHg vacuum", "discharge_pressure 182 psig", "ambient_temperature 84 degF", "suction_line_temperature_at_bulb 14 degF", "condenser_coil clean", "condenser_fans all"]).Code);

    [Fact]
    public void Without_a_receiver_a_little_more_subcooling_is_no_overcharge()
    {
        string[] plant = ["refrigerant R404A", "application cooler", "compressor running", "sight_glass clear", "box_temperature 38 degF", "setpoint 36 degF", "superheat 9 degF", "subcooling 12 degF",
            "condenser_split 25 degF", "design_condenser_split 25 degF", "condenser_coil clean", "condenser_fans all"];

        Assert.Equal(FaultCode.NoFault, Leading([.. plant, "liquid_receiver no"]).Code);
    }

    [Fact]
    public void Three_degrees_of_subcooling_under_a_flashing_glass_are_first_a_charge_question() =>
        Assert.Equal(
            FaultCode.Undercharge,
            Leading(["refrigerant R404A", "application cooler", "compressor running", "sight_glass flashing", "superheat 22 degF", "subcooling 3 degF"]).Code);

    [Fact]
    public void A_vacuum_is_no_slip_of_the_pen() =>
        Assert.Empty(Assessor.Assess(FactsOf.Visit("refrigerant R22", "application cooler", "compressor running", "box_temperature 52 degF", "suction_pressure 5 inHg vacuum", "suction_line_temperature_at_bulb 41 degF")).Rejected);

    [Fact]
    public void A_coil_with_little_to_do_is_not_proof_enough_against_the_compressor()
    {
        string[] highSuction = ["refrigerant R134a", "application cooler", "setpoint 3 degC", "box_temperature 12 degC", "calling_for_cooling yes", "compressor running", "suction_pressure 3.2 bar",
            "discharge_pressure 12.8 bar", "ambient_temperature 31 degC", "sight_glass clear", "design_evaporator_td 6 K", "design_condenser_split 14 K"];

        Assert.Equal((FaultCode.CompressorInefficient, true), Leading(highSuction) is var seen ? (seen.Code, seen.Standing != Standing.Established) : default);
        Assert.Equal((FaultCode.CompressorInefficient, Standing.Established), Leading([.. highSuction, "rated_current 10 A", "compressor_current 5 A"]));
    }

    private static (FaultCode Code, Standing Standing) Leading(string[] lines) =>
        Assessor.Assess(FactsOf.Visit(lines)).Findings[0] is var first ? (first.Code, first.Standing) : default;
}
