using Assistant.Trade.Rules;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Sets of readings that look like a proof and are none. Pressures are from the embedded tables, rounded as a gauge is read.</summary>
public class FalseProofTests
{
    // R404A: 182 psig is 83 degF of condensing, five under the setting; 3 psig is -43 degF of suction. 79 degF leaves 3 degF of subcooling.
    private static readonly string[] ShortInTheCold =
    [
        "refrigerant R404A", "application freezer", "head_pressure_control valve", "head_pressure_control_setting 88 degF", "ambient_temperature -5 degF",
        "discharge_pressure 182 psig", "sight_glass flashing", "liquid_line_temperature 79 degF", "suction_pressure 3 psig",
        "suction_line_temperature_at_bulb -14 degF", "box_temperature 8 degF", "setpoint -10 degF", "compressor running",
    ];

    [Fact]
    public void A_low_side_far_over_the_high_side_at_rest_is_not_both_sides_equal()
    {
        // R404A: 280 psig is 113 degF, 11 psig -30 degF: the two gauges were read the wrong way round or in another unit.
        var findings = Assessor.Assess(PlainCases.With("compressor off;suction_pressure 280 psig;discharge_pressure 11 psig;condenser_fans none;box_temperature 48 degF;box_temperature_check 48 degF")).Findings;

        Assert.DoesNotContain(findings, f => f.Standing == Standing.Established);
    }

    // Setpoint 36 and differential 3: the control must call at 39 degF.
    [Theory]
    [InlineData(40, false)]
    [InlineData(43, true)]
    public void A_room_a_degree_over_its_calling_point_does_not_prove_that_the_control_failed(int room, bool proven)
    {
        var change = $"{PlainCases.Changes[FaultCode.NoCallForCooling]};box_temperature {room} degF;box_temperature_check {room} degF";
        var first = Assessor.Assess(PlainCases.With(change)).Findings[0];

        Assert.Equal(FaultCode.NoCallForCooling, first.Code);
        Assert.Equal(proven, first.Standing == Standing.Established);
    }

    [Fact]
    public void A_low_head_is_not_laid_to_its_control_for_certain_while_the_compressor_starts_and_stops()
    {
        var findings = Assessor.Assess(PlainCases.With(PlainCases.Changes[FaultCode.HeadPressureControlLow] + ";compressor short-cycling")).Findings;

        Assert.DoesNotContain(findings, f => f.Standing == Standing.Established);
        Assert.Contains(findings, f => f.Code == FaultCode.HeadPressureControlLow && f.Standing != Standing.RuledOut);
    }

    [Fact]
    public void A_flashing_glass_is_a_charge_question_until_a_drop_over_the_drier_was_looked_for() =>
        Assert.Equal(FaultCode.Undercharge, First(ShortInTheCold));

    [Fact]
    public void A_drop_over_the_drier_makes_it_a_restriction() =>
        Assert.Equal(FaultCode.LiquidLineRestriction, First([.. ShortInTheCold, "drier_inlet_temperature 79 degF", "drier_outlet_temperature 68 degF"]));

    private static FaultCode First(string[] lines) => Assessor.Assess(FactsOf.Visit(lines)).Findings[0].Code;
}
