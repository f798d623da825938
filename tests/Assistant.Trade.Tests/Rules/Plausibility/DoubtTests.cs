using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules.Plausibility;

/// <summary>What a slip in one reading does to the verdict on all of them.</summary>
public class DoubtTests
{
    // R404A: 300 psig is 118 degF of condensing, 185 psig at rest 84 degF by the bubble point: a foreign gas, at 75 degF outside.
    private static readonly string[] ForeignGas =
    [
        "refrigerant R404A", "application cooler", "compressor running", "ambient_temperature 75 degF", "discharge_pressure 300 psig", "liquid_line_temperature 98 degF",
        "high_side_standing_pressure 185 psig", "sight_glass clear", "condenser_coil clean", "condenser_fans all", "box_temperature 38 degF", "setpoint 36 degF",
    ];

    [Fact]
    public void Without_a_slip_the_verdict_is_established() =>
        Assert.Equal((FaultCode.Noncondensables, Standing.Established), Leading(ForeignGas));

    [Fact]
    public void Where_one_reading_was_a_slip_nothing_is_established()
    {
        var leading = Leading([.. ForeignGas, "suction_line_temperature_at_bulb 34 degC"]);

        Assert.NotEqual(Standing.Established, leading.Standing);
    }

    [Fact]
    public void A_slip_is_told_by_the_unit_that_would_fit()
    {
        var why = Assert.Single(Assessor.Assess(FactsOf.Visit([.. ForeignGas, "suction_line_temperature_at_bulb 34 degC"])).Rejected).Why;

        Assert.Equal("reason.reading-in-another-unit", why.Key);
        Assert.Contains(why.Parts, p => p.Word == "degF");
    }

    [Fact]
    public void A_minus_that_was_left_out_is_told()
    {
        var rejected = Assessor.Assess(FactsOf.Visit("application freezer", "box_temperature 20 degC", "box_temperature_check -19 degC", "setpoint -20 degC", "evaporator_air_in -19 degC")).Rejected;

        Assert.Equal("reason.reading-without-its-minus", Assert.Single(rejected).Why.Key);
    }

    [Fact]
    public void A_contradiction_that_no_unit_explains_names_the_other_reading()
    {
        var rejected = Assessor.Assess(FactsOf.Visit("box_temperature_check 12 degC", "evaporator_air_in 5 degC")).Rejected;

        Assert.All(rejected, r => Assert.Equal("reason.reading-contradicted", r.Why.Key));
        Assert.Contains(rejected[0].Why.Parts, p => p.Word == "evaporator_air_in");
        Assert.Contains(rejected[1].Why.Parts, p => p.Word == "box_temperature_check");
    }

    [Fact]
    public void Where_readings_were_slips_and_two_faults_are_level_there_is_no_verdict()
    {
        var assessment = Assessor.Assess(FactsOf.Visit("refrigerant R404A", "sight_glass flashing", "compressor running", "discharge_pressure 40 psig", "ambient_temperature 85 degF", "suction_pressure 60 psig"));

        Assert.NotEmpty(assessment.Rejected);
        Assert.Equal(FaultCode.NotEnoughEvidence, assessment.Findings[0].Code);
        Assert.Contains(assessment.Findings[0].Because, r => r.Key == "reason.readings-questioned");
        Assert.All(assessment.Findings.Skip(1), f => Assert.True(f.Standing >= Standing.Possible));
    }

    [Fact]
    public void A_slip_that_changes_nothing_leaves_the_verdict_likely()
    {
        var assessment = Assessor.Assess(FactsOf.Visit("coil_ice blocked", "box_temperature 45 degF", "box_temperature_check 45 degC"));

        Assert.NotEmpty(assessment.Rejected);
        Assert.Equal((FaultCode.CoilIced, Standing.Likely), (assessment.Findings[0].Code, assessment.Findings[0].Standing));
    }

    // Everything in bar and degC but the one reading that decides, in psig: it may be a slip of the pen.
    [Theory]
    [InlineData("high_side_standing_pressure 12.75 bar", Standing.Established)]
    [InlineData("high_side_standing_pressure 185 psig", Standing.Established)]
    public void A_reading_in_the_other_system_that_would_mean_nothing_else_is_no_slip(string standing, Standing expected) =>
        Assert.Equal(
            (FaultCode.Noncondensables, expected),
            Leading(["refrigerant R404A", "application cooler", "compressor running", "ambient_temperature 23.9 degC", "discharge_pressure 20.7 bar", "liquid_line_temperature 36.7 degC",
                standing, "sight_glass clear", "condenser_coil clean", "condenser_fans all", "box_temperature 3 degC", "setpoint 2 degC"]));

    private static (FaultCode Code, Standing Standing) Leading(string[] lines) =>
        Assessor.Assess(FactsOf.Visit(lines)).Findings[0] is var first ? (first.Code, first.Standing) : default;
}
