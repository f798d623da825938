using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Derivation;
using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Tests.Rules;

/// <summary>What is read of a plant the rules were not written for is not set against them.</summary>
public class OutsideTheRulesTests
{
    // R404A: 56 psig is 20.5 degF, 225 psig 97 degF of condensing (dew). 30 degF of superheat would be a starved thermostatic valve.
    private const string Plant = "application cooler;setpoint 36 degF;box_temperature 38 degF;ambient_temperature 75 degF;compressor running;sight_glass clear;"
        + "suction_pressure 56 psig;discharge_pressure 225 psig;superheat 30 degF;subcooling 6 degF";

    [Theory]
    [InlineData(nameof(Symptom.SuperheatExcess))]
    [InlineData(nameof(Symptom.ValveDemand))]
    [InlineData(nameof(Symptom.Subcooling))]
    public void A_fixed_orifice_controls_no_superheat_and_holds_no_liquid_back(string symptom)
    {
        Assert.True(Left("refrigerant R404A;metering_device txv", out _).Knows(Enum.Parse<Symptom>(symptom)));
        Assert.False(Left("refrigerant R404A;metering_device fixed", out var why).Knows(Enum.Parse<Symptom>(symptom)));
        Assert.Equal("reason.outside-fixed-orifice", why!.Key);
    }

    [Fact]
    public void Behind_a_fixed_orifice_the_condenser_is_judged_as_ever() => Assert.True(Left("refrigerant R404A;metering_device fixed", out _).Knows(Symptom.HeadExcess));

    [Theory]
    [InlineData(nameof(Symptom.SuperheatExcess))]
    [InlineData(nameof(Symptom.Subcooling))]
    public void Carbon_dioxide_may_be_above_its_critical_point_where_nothing_condenses(string symptom)
    {
        Assert.False(Left("refrigerant R744", out var why).Knows(Enum.Parse<Symptom>(symptom)));
        Assert.Equal("reason.outside-transcritical", why!.Key);
    }

    [Fact]
    public void A_valve_of_which_nothing_is_said_is_taken_for_a_thermostatic_one()
    {
        Assert.True(Left("refrigerant R404A", out var why).Knows(Symptom.SuperheatExcess));
        Assert.Null(why);
    }

    private static SymptomTable Left(string facts, out Reason? why)
    {
        var state = new PlantState(FactsOf.Visit([.. (facts + ";" + Plant).Split(';')]));
        var table = SymptomReader.Read(state);
        why = OutsideTheRules.TakeAway(state, table);
        return table;
    }
}
