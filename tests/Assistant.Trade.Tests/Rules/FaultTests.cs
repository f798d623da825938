using Assistant.Trade.Facts;
using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Calls a foreman would know at once, written by hand. Pressures are from the embedded tables, rounded as a gauge is read.</summary>
public class FaultTests
{
    public static TheoryData<FaultCode> EachFault => [.. PlainCases.Changes.Keys];

    [Theory]
    [MemberData(nameof(EachFault))]
    public void A_plain_case_of_each_fault_is_named_first(FaultCode fault) => Assert.Equal(fault, First(PlainCases.Changes[fault]).Code);

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

    private static Assessment Assess(string changes) => Assessor.Assess(PlainCases.With(changes));

    private static Finding First(string changes) => Assess(changes).Findings[0];

    private static IEnumerable<Finding> Open(string changes) => Assess(changes).Findings.Where(f => f.Standing != Standing.RuledOut);
}
