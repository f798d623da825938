using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Trade.Tests.Sums;

/// <summary>A box that comes down exponentially with a time constant of an hour; values worked out by hand from exp(-t).</summary>
public sealed class PullDownTests
{
    // 2 + 18 exp(-t): to 4 degC it takes ln 9 = 2.197 h from the start, 0.697 h from the reading at 1.5 h.
    [Fact]
    public void The_time_to_setpoint_is_reckoned_from_the_last_reading()
    {
        var fit = PullDown.Fit([Read(0, 20), Read(0.5, 12.9176), Read(1, 8.6218), Read(1.5, 6.0163)], new(4))!;
        Assert.Equal(2, fit.LevelsOffAt.Degrees, 0.02);
        Assert.Equal(1, fit.TimeConstant.Hours, 0.01);
        Assert.Equal(0.697, fit.ToSetpoint!.Value.Hours, 0.01);
    }

    // 6 + 14 exp(-t).
    [Fact]
    public void A_box_that_levels_off_above_its_setpoint_will_not_get_there()
    {
        var fit = PullDown.Fit([Read(0, 20), Read(0.5, 14.4914), Read(1, 11.1503), Read(1.5, 9.1238)], new(4))!;
        Assert.Equal(6, fit.LevelsOffAt.Degrees, 0.02);
        Assert.Null(fit.ToSetpoint);
    }

    [Fact]
    public void A_box_that_warms_will_not_get_there() =>
        Assert.Null(PullDown.Fit([Read(0, 8), Read(0.5, 10), Read(1, 11)], new(4))!.ToSetpoint);

    [Fact]
    public void A_box_below_its_setpoint_is_there() =>
        Assert.Equal(0, PullDown.Fit([Read(0, 12), Read(0.5, 7), Read(1, 3.5)], new(4))!.ToSetpoint!.Value.Seconds);

    // A straight 2 K an hour from 20 to 14 degC: to 4 degC five hours more, a little longer because nothing stays straight.
    [Fact]
    public void A_box_still_on_a_straight_line_is_carried_on_along_it() =>
        Assert.InRange(PullDown.Fit([Read(0, 20), Read(1, 18), Read(2, 16), Read(3, 14)], new(4))!.ToSetpoint!.Value.Hours, 4.9, 5.6);

    [Fact]
    public void The_clock_may_start_anywhere() =>
        Assert.Equal(0.697, PullDown.Fit([Read(9, 20), Read(9.5, 12.9176), Read(10, 8.6218), Read(10.5, 6.0163)], new(4))!.ToSetpoint!.Value.Hours, 0.01);

    [Fact]
    public void Two_readings_are_not_a_course()
    {
        Assert.Null(PullDown.Fit([Read(0, 20), Read(1, 12)], new(4)));
        Assert.Null(PullDown.Fit([Read(0, 20), Read(1, 12), Read(1, 12)], new(4)));
    }

    [Fact]
    public void Readings_may_stand_in_any_order() =>
        Assert.Equal(0.697, PullDown.Fit([Read(1.5, 6.0163), Read(0, 20), Read(1, 8.6218), Read(0.5, 12.9176)], new(4))!.ToSetpoint!.Value.Hours, 0.01);

    private static BoxReading Read(double hours, double degrees) => new(Duration.FromHours(hours), new(degrees));
}
