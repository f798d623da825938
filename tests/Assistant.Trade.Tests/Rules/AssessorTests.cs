using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

public class AssessorTests
{
    [Fact]
    public void Without_facts_there_is_not_enough_evidence_and_a_fact_to_begin_with()
    {
        var assessment = Assessor.Assess(FactsOf.Visit());

        var finding = Assert.Single(assessment.Findings);
        Assert.Equal(FaultCode.NotEnoughEvidence, finding.Code);
        Assert.Equal(Standing.Possible, finding.Standing);
        Assert.NotNull(assessment.Next);
    }

    [Fact]
    public void A_flashing_glass_with_no_subcooling_and_high_superheat_is_short_of_charge()
    {
        var assessment = Assessor.Assess(FactsOf.Visit(
            "refrigerant R404A", "application cooler", "box_temperature 44 degF", "setpoint 36 degF", "calling_for_cooling yes",
            "coil_ice distributor-end", "evaporator_fans all", "ambient_temperature 75 degF", "compressor running", "sight_glass flashing",
            "suction_pressure 38 psig", "discharge_pressure 225 psig", "suction_line_temperature_at_bulb 38 degF", "liquid_line_temperature 98 degF",
            "condenser_coil clean", "condenser_fans all"));

        Assert.Equal(FaultCode.Undercharge, assessment.Findings[0].Code);
        Assert.True(assessment.Findings[0].Standing <= Standing.Likely);
        Assert.Contains(assessment.Findings[0].Because, r => r.Key == "reason.sight-glass-flashing");
    }

    [Fact]
    public void A_blocked_coil_is_cleared_before_anything_is_judged_through_it()
    {
        var assessment = Assessor.Assess(FactsOf.Visit("coil_ice blocked", "box_temperature 45 degF", "sight_glass flashing"));

        Assert.Equal(FaultCode.CoilIced, assessment.Findings[0].Code);
    }
}
