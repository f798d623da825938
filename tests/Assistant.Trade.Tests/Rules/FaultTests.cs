using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Calls a foreman would know at once, written by hand. Pressures are from the embedded tables, rounded as a gauge is read.</summary>
public class FaultTests
{
    // R404A cooler, 75 degF outside: 56 psig is 20.5 degF of suction, 225 psig is 97 degF of condensing (dew).
    private static readonly string[] Sound =
    [
        "refrigerant R404A", "application cooler", "design_condenser_split 25 degF", "design_evaporator_td 12 degF", "head_pressure_control valve",
        "head_pressure_control_setting 85 degF", "setpoint 36 degF", "differential 3 degF", "box_temperature 38 degF", "box_temperature_check 38 degF",
        "calling_for_cooling yes", "coil_ice none", "evaporator_fans all", "door_condition good", "solenoid_energised yes", "defrost_active no",
        "ambient_temperature 75 degF", "compressor running", "condenser_fans all", "condenser_coil clean", "sight_glass clear",
        "suction_pressure 56 psig", "discharge_pressure 225 psig", "suction_line_temperature_at_bulb 35 degF", "liquid_line_temperature 92 degF",
    ];

    [Theory]
    [InlineData(FaultCode.NoFault, "")]
    [InlineData(FaultCode.Undercharge, "sight_glass flashing;liquid_line_temperature 97.5 degF;suction_pressure 42 psig;suction_line_temperature_at_bulb 37 degF")]
    [InlineData(FaultCode.Overcharge, "discharge_pressure 300 psig;liquid_line_temperature 92 degF;high_side_standing_pressure 162 psig")]
    [InlineData(FaultCode.Noncondensables, "discharge_pressure 300 psig;liquid_line_temperature 98 degF;high_side_standing_pressure 185 psig")]
    [InlineData(FaultCode.CondenserAirflow, "discharge_pressure 310 psig;liquid_line_temperature 114 degF;condenser_coil dirty")]
    [InlineData(FaultCode.HeadPressureControlLow, "ambient_temperature 10 degF;discharge_pressure 80 psig;liquid_line_temperature 32 degF;suction_pressure 38 psig;suction_line_temperature_at_bulb 36 degF")]
    [InlineData(FaultCode.HeadPressureControlHigh, "discharge_pressure 300 psig;liquid_line_temperature 116.5 degF")]
    [InlineData(FaultCode.LiquidLineRestriction, "sight_glass flashing;suction_pressure 30 psig;suction_line_temperature_at_bulb 36 degF;drier_inlet_temperature 92 degF;drier_outlet_temperature 82 degF;discharge_pressure 205 psig;liquid_line_temperature 87 degF")]
    [InlineData(FaultCode.ExpansionValveStarving, "suction_pressure 32 psig;suction_line_temperature_at_bulb 36 degF;discharge_pressure 200 psig;liquid_line_temperature 85 degF")]
    [InlineData(FaultCode.ExpansionValveOverfeeding, "suction_line_temperature_at_bulb 25 degF;suction_line_temperature_at_compressor 28 degF")]
    [InlineData(FaultCode.EvaporatorAirflow, "evaporator_fans some;suction_pressure 40 psig;suction_line_temperature_at_bulb 20 degF;evaporator_air_in 38 degF;evaporator_air_out 24 degF")]
    [InlineData(FaultCode.CoilIced, "coil_ice blocked;suction_pressure 35 psig;suction_line_temperature_at_bulb 14 degF")]
    [InlineData(FaultCode.CompressorInefficient, "suction_pressure 72 psig;box_temperature 44 degF;box_temperature_check 44 degF;suction_line_temperature_at_bulb 41 degF;discharge_pressure 190 psig;liquid_line_temperature 82 degF;compressor_current 6 A;rated_current 11 A")]
    [InlineData(FaultCode.CompressorNotRunning, "compressor off;suction_pressure 90 psig;discharge_pressure 91 psig;condenser_fans none;box_temperature 48 degF;box_temperature_check 48 degF")]
    [InlineData(FaultCode.NoLiquidFeed, "compressor off;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;box_temperature 48 degF;box_temperature_check 48 degF")]
    [InlineData(FaultCode.NoCallForCooling, "compressor off;calling_for_cooling no;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;box_temperature 46 degF;box_temperature_check 46 degF")]
    [InlineData(FaultCode.ControlSetting, "compressor off;calling_for_cooling no;solenoid_energised no;suction_pressure 20 psig;discharge_pressure 152 psig;condenser_fans none;setpoint 46 degF;box_temperature 47 degF;box_temperature_check 47 degF")]
    [InlineData(FaultCode.SensorError, "box_temperature 46 degF")]
    [InlineData(FaultCode.ExcessLoad, "door_condition left-open;box_temperature 50 degF;box_temperature_check 50 degF;suction_pressure 72 psig;suction_line_temperature_at_bulb 46 degF;discharge_pressure 245 psig;liquid_line_temperature 98 degF")]
    public void A_plain_case_of_each_fault_is_named_first(FaultCode fault, string changes) => Assert.Equal(fault, First(changes).Code);

    [Fact]
    public void A_head_under_its_setting_with_a_flashing_glass_is_first_a_charge_question()
    {
        var finding = First("ambient_temperature 10 degF;discharge_pressure 175 psig;sight_glass flashing;liquid_line_temperature 81 degF;suction_pressure 44 psig;suction_line_temperature_at_bulb 36 degF");

        Assert.Equal(FaultCode.Undercharge, finding.Code);
    }

    [Fact]
    public void A_superheat_of_two_degrees_give_or_take_three_establishes_nothing()
    {
        // 56 psig is 20.5 degF on the unit's gauge; with a psi, a degree and the line's drop the superheat may be 5.
        Assert.NotEqual(Standing.Established, First("suction_line_temperature_at_bulb 29 degF").Standing);
    }

    [Fact]
    public void Two_thermometers_a_degree_apart_are_no_fault() =>
        Assert.DoesNotContain(Open("box_temperature_check 39 degF"), f => f.Code == FaultCode.SensorError);

    [Theory]
    [InlineData("discharge_pressure 40 psig", "discharge_pressure")]
    [InlineData("suction_line_temperature_at_bulb 5 degF", "suction_line_temperature_at_bulb")]
    [InlineData("box_temperature 38 degC", "box_temperature")]
    [InlineData("ambient_temperature 75 degC", "ambient_temperature")]
    [InlineData("liquid_line_temperature 92 degC", "liquid_line_temperature")]
    [InlineData("discharge_pressure 225 kPa", "discharge_pressure")]
    [InlineData("suction_pressure 56 bar", "suction_pressure")]
    public void A_reading_that_can_not_be_is_questioned_and_kept_out(string change, string fact)
    {
        var assessment = Assess(change);

        Assert.Contains(assessment.Rejected, r => r.Value.Fact.Name == fact);
        Assert.DoesNotContain(assessment.Findings, f => f.Standing == Standing.Established);
    }

    [Fact]
    public void The_questioned_reading_says_which_unit_would_fit()
    {
        var why = Assert.Single(Assess("box_temperature 38 degC").Rejected).Why;

        Assert.Equal("reason.reading-in-another-unit", why.Key);
        Assert.Contains(why.Parts, p => p.Word == "degF");
    }

    [Fact]
    public void A_far_gauge_with_a_near_bulb_is_marked_approximate()
    {
        Assert.True(Assess("").Derived.SuperheatIsApproximate);
        Assert.False(Assess("suction_pressure_at_evaporator 58 psig").Derived.SuperheatIsApproximate);
    }

    [Fact]
    public void Altitude_counts()
    {
        // ISO 2533: 82.5 kPa at 1700 m, so a gauge reads the same while the absolute pressure is 2.7 psi lower.
        var low = Assess("").Derived.SaturatedSuctionTemperature!.Value;
        var high = Assess("altitude 1700 m").Derived.SaturatedSuctionTemperature!.Value;
        Assert.InRange((low - high).Kelvins, 1.0, 2.5);
    }

    [Fact]
    public void The_flooded_fraction_follows_from_setting_split_and_ambient()
    {
        // 90 degF held, 30 degF split, 0 degF outside: 0.67 (first principles, worked by hand).
        var derived = Assess("head_pressure_control_setting 90 degF;design_condenser_split 30 degF;ambient_temperature 0 degF").Derived;
        Assert.Equal(0.667, derived.FloodedFraction!.Value, 3);
    }

    [Fact]
    public void A_setting_by_bubble_is_compared_as_a_pressure()
    {
        // R448A at 90 degF holds 181.5 psig by dew and 210.9 by bubble.
        var dew = Assess("refrigerant R448A;ambient_temperature 0 degF").Derived.FloodedFraction!.Value;
        var bubble = Assess("refrigerant R448A;ambient_temperature 0 degF;saturation_basis bubble").Derived.FloodedFraction!.Value;
        Assert.True(bubble > dew);
    }

    [Theory]
    [InlineData("refrigerant R744", "reason.outside-transcritical")]
    [InlineData("metering_device fixed", "reason.outside-fixed-orifice")]
    [InlineData("metering_device eev;suction_pressure 32 psig;suction_line_temperature_at_bulb 36 degF;discharge_pressure 200 psig;liquid_line_temperature 85 degF", "reason.outside-electronic-valve")]
    public void What_lies_outside_the_rules_is_said(string changes, string key)
    {
        var finding = First(changes);

        Assert.Contains(finding.Because.Concat(finding.Against), r => r.Key == key);
        Assert.NotEqual(Standing.Established, finding.Standing);
    }

    [Fact]
    public void A_ruled_out_fault_names_the_fact_that_did_it() =>
        Assert.All(Assess("coil_ice blocked").Findings.Where(f => f.Standing == Standing.RuledOut), f => Assert.NotEmpty(f.Against));

    private static Assessment Assess(string changes)
    {
        var facts = FactsOf.Visit(Sound);
        foreach (var change in changes.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            facts = facts.With(FactsOf.Value(change));
        }

        return Assessor.Assess(facts);
    }

    private static Finding First(string changes) => Assess(changes).Findings[0];

    private static IEnumerable<Finding> Open(string changes) => Assess(changes).Findings.Where(f => f.Standing != Standing.RuledOut);
}
