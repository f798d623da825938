using Assistant.Trade.Cautions;
using Assistant.Trade.Rules;
using Assistant.Trade.Tests.Rules;

namespace Assistant.Trade.Tests.Cautions;

public class CautionTriggersTests
{
    [Theory]
    [InlineData("refrigerant R290", CautionCode.FlammableRefrigerant)]
    [InlineData("refrigerant R454C", CautionCode.FlammableRefrigerant)]
    [InlineData("refrigerant R744", CautionCode.HighPressureCo2)]
    [InlineData("refrigerant R744", CautionCode.OxygenDisplacement)]
    [InlineData("refrigerant R717", CautionCode.Ammonia)]
    [InlineData("condenser_coil dirty", CautionCode.LockOut)]
    [InlineData("condenser_coil snowed", CautionCode.MovingFan)]
    [InlineData("condenser_fans some", CautionCode.MovingFan)]
    [InlineData("condenser_fans cycling", CautionCode.MovingFan)]
    [InlineData("evaporator_fans none", CautionCode.LockOut)]
    [InlineData("coil_ice blocked", CautionCode.IceRemoval)]
    [InlineData("discharge_line_temperature 150 degF", CautionCode.HotSurface)]
    [InlineData("product_temperature 42 degF", CautionCode.FoodSafety)]
    [InlineData("ambient_temperature 20 degF", CautionCode.RoofWeather)]
    [InlineData("ambient_temperature 20 degF", CautionCode.Ladder)]
    [InlineData("ambient_temperature 20 degF", CautionCode.LoneWork)]
    [InlineData("condenser_coil snowed", CautionCode.Ladder)]
    [InlineData("condenser_coil snowed", CautionCode.RoofWeather)]
    [InlineData("application freezer", CautionCode.LoneWork)]
    [InlineData("application freezer", CautionCode.TrappedInside)]
    [InlineData("box_temperature -5 degF", CautionCode.ColdStress)]
    [InlineData("cylinder_temperature 130 degF", CautionCode.CylinderHeating)]
    [InlineData("charge_added 2 lb", CautionCode.LiquidToSuction)]
    [InlineData("charge_recovered 2 lb", CautionCode.OverfullCylinder)]
    [InlineData("test_pressure 150 psig", CautionCode.Nitrogen)]
    [InlineData("hot_work_allowed yes", CautionCode.HotWork)]
    public void A_fact_brings_its_caution(string fact, CautionCode caution) =>
        Assert.Contains(caution, CautionTriggers.For(FactsOf.Visit(fact), []));

    [Theory]
    [InlineData("refrigerant R404A", CautionCode.FlammableRefrigerant)]
    [InlineData("condenser_coil clean", CautionCode.LockOut)]
    [InlineData("condenser_fans all", CautionCode.MovingFan)]
    [InlineData("evaporator_fans all", CautionCode.MovingFan)]
    [InlineData("coil_ice light", CautionCode.IceRemoval)]
    [InlineData("discharge_line_temperature 130 degF", CautionCode.HotSurface)]
    [InlineData("product_temperature 41 degF", CautionCode.FoodSafety)]
    [InlineData("ambient_temperature 40 degF", CautionCode.RoofWeather)]
    [InlineData("ambient_temperature 40 degF", CautionCode.Ladder)]
    [InlineData("condenser_coil dirty", CautionCode.RoofWeather)]
    [InlineData("application cooler", CautionCode.LoneWork)]
    [InlineData("application cooler", CautionCode.TrappedInside)]
    [InlineData("box_temperature 30 degF", CautionCode.ColdStress)]
    [InlineData("cylinder_temperature 100 degF", CautionCode.CylinderHeating)]
    [InlineData("hot_work_allowed no", CautionCode.HotWork)]
    [InlineData("compressor off", CautionCode.Electrical)]
    public void A_fact_that_is_harmless_brings_none(string fact, CautionCode caution) =>
        Assert.DoesNotContain(caution, CautionTriggers.For(FactsOf.Visit(fact), []));

    [Fact]
    public void A_still_compressor_under_a_call_is_an_electrical_matter() =>
        Assert.Contains(CautionCode.Electrical, CautionTriggers.For(FactsOf.Visit("compressor off", "calling_for_cooling yes"), []));

    [Theory]
    [InlineData(Standing.Established, true)]
    [InlineData(Standing.Likely, true)]
    [InlineData(Standing.Possible, false)]
    [InlineData(Standing.RuledOut, false)]
    public void Only_a_likely_fault_brings_the_cautions_of_its_repair(Standing standing, bool given)
    {
        var cautions = CautionTriggers.For(FactsOf.Visit(), [new(FaultCode.Undercharge, standing, [], [], "")]);

        Assert.Equal(given, cautions.Contains(CautionCode.NoVenting));
        Assert.Equal(given, cautions.Contains(CautionCode.TrappedLiquid));
    }

    // The limits themselves, as their sources put them: a burn at 60 degC and over, cold food above 5 degC (FDA Food Code), ice at 0 degC and under, 52 degC (49 CFR 173).
    [Theory]
    [InlineData("discharge_line_temperature 60 degC", CautionCode.HotSurface, true)]
    [InlineData("discharge_line_temperature 59.9 degC", CautionCode.HotSurface, false)]
    [InlineData("product_temperature 5 degC", CautionCode.FoodSafety, false)]
    [InlineData("product_temperature 5.1 degC", CautionCode.FoodSafety, true)]
    [InlineData("ambient_temperature 0 degC", CautionCode.Ladder, true)]
    [InlineData("ambient_temperature 0.1 degC", CautionCode.Ladder, false)]
    [InlineData("box_temperature -10 degC", CautionCode.TrappedInside, true)]
    [InlineData("box_temperature -9.9 degC", CautionCode.TrappedInside, false)]
    [InlineData("cylinder_temperature 52 degC", CautionCode.CylinderHeating, true)]
    [InlineData("cylinder_temperature 51.9 degC", CautionCode.CylinderHeating, false)]
    public void A_limit_is_kept_to_the_tenth_of_a_degree(string fact, CautionCode caution, bool given) =>
        Assert.Equal(given, CautionTriggers.For(FactsOf.Visit(fact), []).Contains(caution));

    [Theory]
    [InlineData("refrigerant R290", "flammable-refrigerant")]
    [InlineData("refrigerant R717", "ammonia")]
    [InlineData("refrigerant R744", "oxygen-displacement high-pressure-co2")]
    [InlineData("refrigerant R134a", "")]
    [InlineData("ambient_temperature -5 degC", "ladder roof-weather lone-work cold-stress")]
    [InlineData("application freezer", "lone-work cold-stress trapped-inside")]
    [InlineData("coil_ice blocked", "lock-out moving-fan ice-removal")]
    [InlineData("coil_ice distributor-end", "")]
    [InlineData("evaporator_fans some", "lock-out moving-fan")]
    [InlineData("evaporator_fans none", "lock-out moving-fan")]
    [InlineData("condenser_coil dirty", "lock-out moving-fan")]
    [InlineData("condenser_coil snowed", "lock-out moving-fan ladder roof-weather")]
    [InlineData("condenser_fans none", "lock-out moving-fan")]
    [InlineData("charge_added 2 lb", "liquid-refrigerant no-venting liquid-to-suction")]
    [InlineData("charge_recovered 2 lb", "liquid-refrigerant overfull-cylinder no-venting")]
    [InlineData("test_pressure 150 psig", "nitrogen")]
    [InlineData("hot_work_allowed yes", "hot-work burnt-refrigerant")]
    [InlineData("calling_for_cooling yes", "")]
    public void A_fact_brings_these_cautions_and_no_others(string fact, string cautions) =>
        Assert.Equal(cautions, string.Join(" ", CautionTriggers.For(FactsOf.Visit(fact), []).Select(c => Codes.Of(c))));

    [Theory]
    [InlineData("ambient_temperature -5 degC", "application freezer", "ladder roof-weather lone-work cold-stress trapped-inside")]
    [InlineData("condenser_coil dirty", "condenser_fans some", "lock-out moving-fan")]
    [InlineData("coil_ice blocked", "evaporator_fans none", "lock-out moving-fan ice-removal")]
    [InlineData("charge_added 2 lb", "charge_recovered 2 lb", "liquid-refrigerant overfull-cylinder no-venting liquid-to-suction")]
    public void Two_facts_that_ask_for_the_same_caution_bring_it_still(string one, string other, string cautions) =>
        Assert.Equal(cautions, string.Join(" ", CautionTriggers.For(FactsOf.Visit(one, other), []).Select(c => Codes.Of(c))));

    [Fact]
    public void A_fact_and_a_likely_fault_that_ask_for_the_same_caution_bring_it_still() =>
        Assert.Contains(CautionCode.NoVenting, CautionTriggers.For(FactsOf.Visit("charge_added 2 lb"), [new(FaultCode.Undercharge, Standing.Likely, [], [], "")]));

    [Fact]
    public void A_still_compressor_without_a_call_is_no_electrical_matter() =>
        Assert.Empty(CautionTriggers.For(FactsOf.Visit("compressor off", "calling_for_cooling no"), []));

    [Fact]
    public void A_running_compressor_under_a_call_is_no_electrical_matter() =>
        Assert.Empty(CautionTriggers.For(FactsOf.Visit("compressor running", "calling_for_cooling yes"), []));

    [Fact]
    public void Each_caution_stands_once_in_the_order_of_the_codes()
    {
        var cautions = CautionTriggers.For(FactsOf.Visit("condenser_coil dirty", "evaporator_fans some", "product_temperature 50 degF"), []);

        Assert.Equal([CautionCode.LockOut, CautionCode.MovingFan, CautionCode.FoodSafety], cautions.ToArray());
    }

    [Fact]
    public void Not_enough_evidence_brings_no_repair() => Assert.Empty(CautionTriggers.Of(FaultCode.NotEnoughEvidence));
}
