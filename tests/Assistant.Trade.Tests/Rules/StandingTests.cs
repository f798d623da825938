using Assistant.Trade.Rules;
using static Assistant.Trade.Rules.FaultCode;

namespace Assistant.Trade.Tests.Rules;

/// <summary>How far each plain case is shown, what it leaves open and what it rules out.</summary>
public class StandingTests
{
    [Theory]
    [InlineData(NoFault, Standing.Likely)]
    [InlineData(Undercharge, Standing.Established)]
    [InlineData(Overcharge, Standing.Established)]
    [InlineData(Noncondensables, Standing.Established)]
    [InlineData(CondenserAirflow, Standing.Established)]
    [InlineData(HeadPressureControlLow, Standing.Established)]
    [InlineData(HeadPressureControlHigh, Standing.Established)]
    [InlineData(LiquidLineRestriction, Standing.Established)]
    [InlineData(ExpansionValveStarving, Standing.Established)]
    [InlineData(ExpansionValveOverfeeding, Standing.Established)]
    [InlineData(EvaporatorAirflow, Standing.Established)]
    [InlineData(CoilIced, Standing.Established)]
    [InlineData(CompressorInefficient, Standing.Established)]
    [InlineData(CompressorNotRunning, Standing.Established)]
    [InlineData(NoLiquidFeed, Standing.Established)]
    [InlineData(NoCallForCooling, Standing.Established)]
    [InlineData(ControlSetting, Standing.Established)]
    [InlineData(SensorError, Standing.Established)]
    [InlineData(ExcessLoad, Standing.Established)]
    public void A_plain_case_stands_as_far_as_it_is_shown(FaultCode fault, Standing standing)
    {
        var assessment = PlainCases.Of(fault);

        Assert.Equal((fault, standing), (assessment.Findings[0].Code, assessment.Findings[0].Standing));
        Assert.Empty(assessment.Findings[0].Against);
        Assert.Equal(standing == Standing.Established, assessment.Next is null);
    }

    // What stays possible beside it has no reading against it; only its own test would tell.
    [Theory]
    [InlineData(NoFault)]
    [InlineData(Undercharge)]
    [InlineData(Overcharge)]
    [InlineData(Noncondensables)]
    [InlineData(CondenserAirflow, Noncondensables, Overcharge, HeadPressureControlHigh)]
    [InlineData(HeadPressureControlLow)]
    [InlineData(HeadPressureControlHigh)]
    [InlineData(LiquidLineRestriction)]
    [InlineData(ExpansionValveStarving, LiquidLineRestriction)]
    [InlineData(ExpansionValveOverfeeding)]
    [InlineData(EvaporatorAirflow)]
    [InlineData(CoilIced)]
    [InlineData(CompressorInefficient)]
    [InlineData(CompressorNotRunning)]
    [InlineData(NoLiquidFeed)]
    [InlineData(NoCallForCooling)]
    [InlineData(ControlSetting)]
    [InlineData(SensorError)]
    [InlineData(ExcessLoad, CompressorInefficient)]
    public void A_plain_case_leaves_open_what_its_readings_do_not_tell(FaultCode fault, params FaultCode[] open) =>
        Assert.Equal(open, PlainCases.Of(fault).Findings.Skip(1).Where(f => f.Standing == Standing.Possible).Select(f => f.Code));

    [Theory]
    [InlineData(Undercharge, LiquidLineRestriction, ExpansionValveStarving, EvaporatorAirflow, NoFault)]
    [InlineData(Overcharge, Noncondensables, CondenserAirflow, NoFault)]
    [InlineData(Noncondensables, Overcharge, CondenserAirflow, NoFault)]
    [InlineData(CondenserAirflow, NoFault)]
    [InlineData(HeadPressureControlLow, Undercharge, ExpansionValveStarving, NoFault)]
    [InlineData(HeadPressureControlHigh, Overcharge, Noncondensables, NoFault)]
    [InlineData(LiquidLineRestriction, Undercharge, ExpansionValveStarving, NoFault)]
    [InlineData(ExpansionValveStarving, Undercharge, EvaporatorAirflow, NoFault)]
    [InlineData(ExpansionValveOverfeeding, NoFault)]
    [InlineData(EvaporatorAirflow, ExpansionValveStarving, CoilIced, NoFault)]
    [InlineData(CompressorInefficient, ExpansionValveOverfeeding, EvaporatorAirflow, NoFault)]
    [InlineData(CompressorNotRunning, NoLiquidFeed)]
    [InlineData(NoLiquidFeed, CompressorNotRunning)]
    [InlineData(NoCallForCooling, ControlSetting, NoFault)]
    [InlineData(ControlSetting, NoCallForCooling, NoFault)]
    [InlineData(SensorError, NoFault)]
    [InlineData(ExcessLoad, NoFault)]
    public void A_plain_case_rules_out_its_neighbours_with_the_reading_that_did_it(FaultCode fault, params FaultCode[] neighbours)
    {
        var ruledOut = PlainCases.Of(fault).Findings.Where(f => f.Standing == Standing.RuledOut).ToDictionary(f => f.Code);

        Assert.All(neighbours, n => Assert.NotEmpty(ruledOut[n].Against));
        Assert.All(ruledOut.Values, f => Assert.Empty(f.Because));
    }

    [Fact]
    public void With_nothing_to_choose_between_two_faults_both_are_only_possible()
    {
        var findings = Assessor.Assess(PlainCases.With("discharge_pressure 300 psig;liquid_line_temperature 95 degF")).Findings;

        Assert.Equal([(Overcharge, Standing.Possible), (Noncondensables, Standing.Possible)], findings.Take(2).Select(f => (f.Code, f.Standing)));
    }

    [Fact]
    public void A_leading_fault_without_its_own_test_is_likely_and_no_more()
    {
        // A hungry coil behind a clear glass, with the glass not seen and the drier not felt.
        var facts = FactsOf.Visit("refrigerant R404A", "application cooler", "compressor running", "evaporator_fans some", "coil_ice none");

        Assert.Equal((EvaporatorAirflow, Standing.Likely), (Assessor.Assess(facts).Findings[0].Code, Assessor.Assess(facts).Findings[0].Standing));
    }

    [Fact]
    public void An_electronic_valve_is_not_blamed_further_than_likely_and_its_plant_is_judged_otherwise()
    {
        var starving = Assessor.Assess(PlainCases.With(PlainCases.Changes[ExpansionValveStarving] + ";metering_device eev")).Findings[0];
        var dirty = Assessor.Assess(PlainCases.With(PlainCases.Changes[CondenserAirflow] + ";metering_device eev")).Findings[0];

        Assert.Equal((ExpansionValveStarving, Standing.Likely), (starving.Code, starving.Standing));
        Assert.Equal((CondenserAirflow, Standing.Established), (dirty.Code, dirty.Standing));
        Assert.Empty(dirty.Against);
    }

    [Theory]
    [InlineData("refrigerant R744", "reason.outside-transcritical")]
    [InlineData("metering_device fixed", "reason.outside-fixed-orifice")]
    public void Where_nothing_is_left_to_judge_the_want_of_a_rule_is_the_reason(string fact, string key)
    {
        var finding = Assert.Single(Assessor.Assess(FactsOf.Visit(fact, "box_temperature 40 degF")).Findings);

        Assert.Equal((NotEnoughEvidence, Standing.Possible), (finding.Code, finding.Standing));
        Assert.Equal(key, Assert.Single(finding.Because).Key);
    }
}
