using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Courses of a gauge in micron after isolation. Limits: common practice.</summary>
public sealed class VacuumDecayTests
{
    [Fact]
    public void Low_and_flat_is_tight() => Assert.Equal(VacuumVerdict.Tight, Judged((0, 400), (5, 410), (10, 412), (15, 415)));

    [Fact]
    public void Low_and_levelling_is_tight() => Assert.Equal(VacuumVerdict.Tight, Judged((0, 300), (5, 520), (10, 590), (15, 610)));

    [Fact]
    public void Levelling_too_high_is_moisture() => Assert.Equal(VacuumVerdict.Moisture, Judged((0, 450), (5, 2200), (10, 2900), (20, 3100)));

    [Fact]
    public void A_straight_climb_is_a_leak_even_below_the_ceiling() => Assert.Equal(VacuumVerdict.Leak, Judged((0, 300), (5, 480), (10, 660), (15, 840)));

    [Fact]
    public void A_straight_climb_past_the_ceiling_is_a_leak() => Assert.Equal(VacuumVerdict.Leak, Judged((0, 450), (5, 1500), (10, 2550), (15, 3600)));

    // A first jump is the gauge settling after the pump: the climb that goes on behind it is what counts.
    [Fact]
    public void A_climb_behind_a_first_jump_is_a_leak() => Assert.Equal(VacuumVerdict.Leak, Judged((0, 300), (1, 420), (8, 600), (15, 780)));

    [Fact]
    public void A_last_flicker_is_no_climb() => Assert.Equal(VacuumVerdict.Tight, Judged((0, 300), (7, 600), (14, 610), (15, 640)));

    // Water at 68 degF stands at 17 500 micron: what climbs beyond it is air.
    [Fact]
    public void Above_the_vapour_pressure_of_water_it_can_only_be_a_leak() => Assert.Equal(VacuumVerdict.Leak, Judged((0, 450), (4, 20_000)));

    [Fact]
    public void Ten_minutes_are_too_short() => Assert.Equal(VacuumVerdict.TooShort, Judged((0, 400), (5, 405), (10, 410)));

    [Fact]
    public void The_time_counts_from_the_first_reading()
    {
        Assert.Equal(VacuumVerdict.TooShort, Judged((5, 400), (10, 405), (18, 410)));
        Assert.Equal(VacuumVerdict.Leak, Judged((60, 300), (67, 540), (75, 780)));
    }

    [Fact]
    public void Two_readings_do_not_show_a_course() => Assert.Equal(VacuumVerdict.TooShort, Judged((0, 400), (20, 900)));

    [Fact]
    public void No_reading_shows_nothing() => Assert.Equal(VacuumVerdict.TooShort, VacuumDecay.Judge([], new(20)));

    [Fact]
    public void Flat_but_never_deep_is_pumped_on() => Assert.Equal(VacuumVerdict.NotDeepEnough, Judged((0, 800), (8, 810), (16, 815)));

    [Fact]
    public void Flat_at_the_ceiling_is_not_tight() => Assert.Equal(VacuumVerdict.Moisture, Judged((0, 1000), (8, 1005), (16, 1010)));

    [Fact]
    public void Readings_out_of_order_are_misuse()
    {
        Assert.Throws<ArgumentException>(() => Judged((0, 400), (10, 410), (5, 405)));
        Assert.Throws<ArgumentException>(() => Judged((0, 400), (0, 410), (20, 415)));
    }

    [Fact]
    public void Ice_hides_from_the_test_below_about_0_degF()
    {
        Assert.True(VacuumDecay.HidesIce(Given.Fahrenheit(0)));
        Assert.False(VacuumDecay.HidesIce(Given.Fahrenheit(5)));
    }

    [Fact]
    public void The_limits_are_500_and_1000_micron_and_15_minutes()
    {
        Assert.Equal(66.661, VacuumDecay.Target.Pascals, 0.001);
        Assert.Equal(133.322, VacuumDecay.Ceiling.Pascals, 0.001);
        Assert.Equal(15, VacuumDecay.ShortestTest.Minutes);
    }

    private static VacuumVerdict Judged(params (double Minutes, double Microns)[] course) =>
        VacuumDecay.Judge([.. course.Select(c => new VacuumReading(Duration.FromMinutes(c.Minutes), new(c.Microns * 0.133322368)))], new(20));
}
