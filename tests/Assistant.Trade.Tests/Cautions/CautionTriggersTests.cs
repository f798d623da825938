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

    [Fact]
    public void Each_caution_stands_once_in_the_order_of_the_codes()
    {
        var cautions = CautionTriggers.For(FactsOf.Visit("condenser_coil dirty", "evaporator_fans some", "product_temperature 50 degF"), []);

        Assert.Equal([CautionCode.LockOut, CautionCode.MovingFan, CautionCode.FoodSafety], cautions.ToArray());
    }

    [Fact]
    public void Not_enough_evidence_brings_no_repair() => Assert.Empty(CautionTriggers.Of(FaultCode.NotEnoughEvidence));
}
