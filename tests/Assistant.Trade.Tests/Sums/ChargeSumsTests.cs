using Assistant.Trade.Sums;
using CsCheck;
using UnitsNet;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Winter charge, the limit of a vessel, cylinders, and what a room would hold.</summary>
public sealed class ChargeSumsTests
{
    private static readonly Volume TenLiters = Volume.FromLiters(10);

    // R-134a held at 40 degC with a split of 20 K: 0.2 flooded at 15 degC, 0.5 at 0 degC; liquid at 20 degC 1225.3, vapour at 40 degC
    // 50.09 kg/m3 (ASHRAE Handbook - Fundamentals, from memory): 0.3 * 10 l * 1175.2 = 3.526 kg.
    [Fact]
    public void The_winter_amount_replaces_vapour_by_liquid_in_the_part_still_to_be_flooded()
    {
        var winter = WinterCharge.Of(Given.Refrigerant("R134a"), new(40), new(20), new(15), new(0), TenLiters)!;
        Assert.Equal(0.2, winter.FloodedToday, 1e-9);
        Assert.Equal(0.5, winter.FloodedColdest, 1e-9);
        Assert.Equal(3.526, winter.Extra.Kilograms, 0.002);
    }

    [Fact]
    public void On_the_coldest_day_itself_nothing_is_added() =>
        Assert.Equal(0, WinterCharge.Of(Given.Refrigerant("R134a"), new(40), new(20), new(-10), new(0), TenLiters)!.Extra.Kilograms);

    [Fact]
    public void A_head_outside_the_table_has_no_winter_amount() =>
        Assert.Null(WinterCharge.Of(Given.Refrigerant("R744"), new(35), new(10), new(0), new(-20), TenLiters));

    [Fact]
    public void Two_steps_of_flooding_add_up_to_the_whole() =>
        Gen.Select(Gen.Double[-30, -10], Gen.Double[0, 1], Gen.Double[0.1, 5]).Sample((coldest, share, liters) =>
        {
            var (fluid, volume) = (Given.Refrigerant("R448A"), Volume.FromLiters(liters));
            var between = coldest + ((20 - coldest) * share);
            var whole = WinterCharge.Of(fluid, new(32), new(15), new(20), new(coldest), volume)!.Extra.Kilograms;
            var rest = WinterCharge.Of(fluid, new(32), new(15), new(between), new(coldest), volume)!;
            var done = (rest.FloodedToday - 0) / rest.FloodedColdest * whole;
            Assert.Equal(whole, rest.Extra.Kilograms + done, 1e-9);
        });

    // R-134a liquid: 1206.7 kg/m3 at 25 degC, 1146.7 at 40 degC (ASHRAE Handbook - Fundamentals, from memory).
    [Theory]
    [InlineData(10, 9.654)]
    [InlineData(25, 9.654)]
    [InlineData(40, 9.174)]
    public void Four_fifths_of_a_vessel_may_be_liquid_at_the_warmer_of_25_degC_and_what_it_may_reach(double warmest, double kilograms) =>
        Assert.Equal(kilograms, LiquidFill.MostIn(TenLiters, Given.Refrigerant("R134a"), new(warmest))!.Value.Kilograms, 0.002);

    [Fact]
    public void A_collar_s_water_capacity_is_a_volume() => Assert.Equal(21.6, LiquidFill.VolumeOfWater(Mass.FromKilograms(21.6)).Liters, 1e-9);

    [Fact]
    public void A_vessel_beyond_the_table_has_no_limit() => Assert.Null(LiquidFill.MostIn(TenLiters, Given.Refrigerant("R744"), new(40)));

    [Fact]
    public void The_net_of_a_cylinder_is_gross_less_tare() =>
        Assert.Equal(6.5, Cylinder.Net(Mass.FromPounds(19), Mass.FromPounds(12.5)).Pounds, 1e-9);

    [Fact]
    public void A_cold_cylinder_has_the_bubble_pressure_of_its_temperature()
    {
        Assert.Equal(210.9, Given.ToPsig(Cylinder.Pressure(Given.Refrigerant("R448A"), Given.Fahrenheit(90))!.Value), 0.05);
        Assert.Null(Cylinder.Pressure(Given.Refrigerant("R744"), new(31)));
    }

    [Fact]
    public void A_cylinder_feeds_only_from_higher_to_lower_pressure()
    {
        Assert.True(Cylinder.Feeds(Given.Psig(60), Given.Psig(20)));
        Assert.False(Cylinder.Feeds(Given.Psig(20), Given.Psig(20)));
        Assert.False(Cylinder.Feeds(Given.Psig(10), Given.Psig(20)));
    }

    // ASHRAE Standard 34 limits, from memory: R-404A 500 g/m3, R-290 9.5 g/m3.
    [Theory]
    [InlineData("R404A", 5, 50, 100, false)]
    [InlineData("R404A", 30, 50, 600, true)]
    [InlineData("R290", 0.5, 50, 10, true)]
    public void A_room_is_judged_by_its_concentration(string designation, double kilograms, double cubicMeters, double grams, bool over)
    {
        var room = RoomConcentration.Of(Given.Refrigerant(designation), Mass.FromKilograms(kilograms), Volume.FromCubicMeters(cubicMeters));
        Assert.Equal(grams, room.Reached.GramsPerCubicMeter, 1e-9);
        Assert.Equal(over, room.IsOver);
    }

    [Fact]
    public void A_room_without_volume_is_misuse() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RoomConcentration.Of(Given.Refrigerant("R290"), Mass.FromKilograms(1), Volume.Zero));

    [Fact]
    public void A_refrigerant_without_a_remembered_limit_is_not_judged() =>
        Assert.Null(RoomConcentration.Of(Given.Refrigerant("R455A"), Mass.FromKilograms(5), Volume.FromCubicMeters(50)).IsOver);
}
