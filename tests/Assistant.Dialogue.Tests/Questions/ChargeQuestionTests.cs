using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>Cylinders, winter charge, leak rate, rooms.</summary>
public sealed class ChargeQuestionTests
{
    private static readonly Call Winter = new Call("winter-charge") { Units = UnitSystem.Metric }
        .Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.HeadPressureControlSetting, 40, UnitOfMeasure.Celsius)
        .Knowing(FactCatalogue.DesignCondenserSplit, 20, UnitOfMeasure.KelvinDifference).Knowing(FactCatalogue.AmbientTemperature, 15, UnitOfMeasure.Celsius)
        .Knowing(FactCatalogue.ColdestDesignAmbient, 0, UnitOfMeasure.Celsius).Knowing(FactCatalogue.CondenserVolume, 10, UnitOfMeasure.Liter);

    // By hand, see the winter charge's own test: 3.53 kg.
    [Fact]
    public void The_winter_amount_is_said_with_its_flooding()
    {
        Assert.Equal("Add 3.53 kg beyond the clear glass for the coldest day of 0 °C.", Winter.Said());
        Assert.Contains("20 % full of liquid at 15 °C and 50 % at 0 °C", Winter.Because(), StringComparison.Ordinal);
        Assert.Contains("volume of the receiver is not known", Winter.Because(), StringComparison.Ordinal);
    }

    // 20 l of receiver: 0.8 * 20 l * 1206.7 kg/m3 = 19.3 kg.
    [Theory]
    [InlineData(10, "13.5 kg; the receiver may hold 19.3 kg (80 %) at pump-down: it fits")]
    [InlineData(17, "CAUTION: with the charge on record that makes 20.5 kg, and the receiver may hold only 19.3 kg (80 %)")]
    public void The_receiver_must_take_it_all_at_pump_down(double charge, string said) =>
        Assert.Contains(said, Winter.Knowing(FactCatalogue.ReceiverVolume, 20, UnitOfMeasure.Liter).Knowing(FactCatalogue.FullCharge, charge, UnitOfMeasure.Kilogram).Because(), StringComparison.Ordinal);

    [Fact]
    public void A_control_that_does_not_flood_has_no_winter_amount() =>
        Assert.Contains("no winter amount", Winter.Knowing(FactCatalogue.HeadPressureControl, "fan-cycling").Said(), StringComparison.Ordinal);

    [Theory]
    [InlineData("head_pressure_control_setting")]
    [InlineData("design_condenser_split")]
    [InlineData("ambient_temperature")]
    [InlineData("coldest_design_ambient")]
    [InlineData("condenser_volume")]
    public void Each_thing_missing_for_the_winter_amount_is_asked_for(string fact)
    {
        var missing = Winter with { Known = Winter.Known.Without(FactCatalogue.Find(fact)!) };
        Assert.True(missing.Answered().Say.IsEmpty);
        Assert.Equal(Call.Phrases.Say("answer.needs", UnitSystem.Metric, ("fact", fact)), missing.Answered().Needs);
    }

    // 36 * 2 m * pi/4 * (8 mm)^2 = 3.619 l: geometry.
    [Fact]
    public void A_condenser_without_a_plate_is_counted_by_its_tubes()
    {
        var call = new Call("condenser-volume") { Units = UnitSystem.Metric }.With(8, UnitOfMeasure.Millimeter).With(36, null).With(2, UnitOfMeasure.Meter);

        Assert.StartsWith("The tubes hold 3.6 l.", call.Said(), StringComparison.Ordinal);
        Assert.StartsWith("Three numbers: how many tubes", new Call("condenser-volume").With(36, null).Answered().Needs!.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_left_in_a_cylinder_is_gross_less_tare()
    {
        var call = new Call("cylinder").Knowing(FactCatalogue.CylinderWeight, 19, UnitOfMeasure.Pound).Knowing(FactCatalogue.CylinderTare, 12.5, UnitOfMeasure.Pound);
        Assert.Equal("6.5 lb in the cylinder.", call.Said());
        Assert.Contains("read the scale and the collar once more", call.Knowing(FactCatalogue.CylinderWeight, 10, UnitOfMeasure.Pound).Said(), StringComparison.Ordinal);
        Assert.NotNull(new Call("cylinder").Answered().Needs);
        Assert.NotNull(new Call("cylinder").Knowing(FactCatalogue.CylinderWeight, 19, UnitOfMeasure.Pound).Answered().Needs);
    }

    // R-134a at 0 degC stands at 27.8 psig (292.8 kPa absolute).
    [Theory]
    [InlineData(20, "above the system's 20 psig: it feeds")]
    [InlineData(35, "not above the system's 35 psig: it does not feed, and is not empty for that")]
    public void A_cold_cylinder_feeds_only_into_less_pressure(double suction, string said) =>
        Assert.Contains(
            "At 32 °F it stands at 28 psig, " + said,
            new Call("cylinder").Knowing(FactCatalogue.Refrigerant, "R134a").Knowing(FactCatalogue.CylinderWeight, 19, UnitOfMeasure.Pound).Knowing(FactCatalogue.CylinderTare, 12.5, UnitOfMeasure.Pound)
                .Knowing(FactCatalogue.CylinderTemperature, 0, UnitOfMeasure.Celsius).Knowing(FactCatalogue.SuctionPressure, suction, UnitOfMeasure.Psig).Because(),
            StringComparison.Ordinal);

    // 50 lb of water are 22.68 l: 0.8 * 22.68 l * 1206.7 kg/m3 = 21.89 kg = 48.3 lb of R-134a.
    [Fact]
    public void A_recovery_cylinder_takes_four_fifths_of_its_volume()
    {
        var call = new Call("cylinder") { Refrigerant = "R134a" }.With(50, UnitOfMeasure.Pound);
        Assert.StartsWith("At most 48.3 lb of R134a", call.Said(), StringComparison.Ordinal);
        Assert.Contains("80 % of it at 77 °F", call.Because(), StringComparison.Ordinal);
        Assert.NotNull((call with { Refrigerant = null }).Answered().Needs);
    }

    // 40 CFR 82.152 by hand: 4/20 = 20 %; 3/30 * 365/60 = 60.8 %.
    [Fact]
    public void A_leak_rate_is_annualised_over_the_days_that_are_said()
    {
        Assert.Equal("20 % of the full charge a year.", new Call("leak-rate").With(4, UnitOfMeasure.Pound).With(20, UnitOfMeasure.Pound).Said());
        Assert.Equal("61 % of the full charge a year.", new Call("leak-rate").Knowing(FactCatalogue.FullCharge, 30, UnitOfMeasure.Pound).With(3, UnitOfMeasure.Pound).With(60, UnitOfMeasure.Day).Said());
        Assert.Equal("61 % of the full charge a year.", new Call("leak-rate").With(30, UnitOfMeasure.Pound, FactCatalogue.FullCharge).With(3, UnitOfMeasure.Pound, FactCatalogue.ChargeAdded).With(60, UnitOfMeasure.Day).Said());
        Assert.NotNull(new Call("leak-rate").With(3, UnitOfMeasure.Pound).Answered().Needs);
        Assert.NotNull(new Call("leak-rate").Answered().Needs);
    }

    [Fact]
    public void A_time_that_was_not_understood_does_not_become_a_year() =>
        Assert.Contains("How many days", new Call("leak-rate").Knowing(FactCatalogue.FullCharge, 30, UnitOfMeasure.Pound).With(3, UnitOfMeasure.Pound).With(2, null).Answered().Needs!.Full, StringComparison.Ordinal);

    // ASHRAE 34 from memory: R-290 9.5 g/m3; 0.5 kg in 50 m3 are 10, 0.3 kg are 6.
    [Theory]
    [InlineData(0.5, "CAUTION: if it all leaked out the room would hold 10 g/m3, above the limit of 9.5 g/m3.")]
    [InlineData(0.3, "If it all leaked out the room would hold 6 g/m3, below the limit of 9.5 g/m3.")]
    public void A_room_is_held_against_its_limit_and_the_table_must_be_checked(double charge, string said)
    {
        var call = new Call("room-concentration") { Units = UnitSystem.Metric }.Knowing(FactCatalogue.Refrigerant, "R290").Knowing(FactCatalogue.FullCharge, charge, UnitOfMeasure.Kilogram).With(50, UnitOfMeasure.CubicMeter);
        Assert.StartsWith(said, call.Said(), StringComparison.Ordinal);
        Assert.Contains("check the current table", call.Because(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_room_needs_its_volume_and_a_limit_may_be_unknown()
    {
        var call = new Call("room-concentration").Knowing(FactCatalogue.Refrigerant, "R455A").Knowing(FactCatalogue.FullCharge, 10, UnitOfMeasure.Pound);
        Assert.NotNull(call.Answered().Needs);
        Assert.StartsWith("If it all leaked out the room would hold 10 lb/1000 ft3. I know no limit", call.With(1000, UnitOfMeasure.CubicFoot).Said(), StringComparison.Ordinal);
    }
}
