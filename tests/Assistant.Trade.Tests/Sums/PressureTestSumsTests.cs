using Assistant.Trade.Sums;
using CsCheck;
using UnitsNet;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Nitrogen hold and standing pressure.</summary>
public sealed class PressureTestSumsTests
{
    // The trade's own figure, from the ideal gas law: 150 psig at 70 degF is 140.7 psig at 40 degF.
    [Fact]
    public void Nitrogen_set_at_150_psig_and_70_degF_reads_140_7_psig_at_40_degF() =>
        Assert.Equal(140.7, Given.ToPsig(NitrogenHold.Expected(Given.Psig(150), Given.Fahrenheit(70), Given.Fahrenheit(40))), 0.05);

    [Fact]
    public void Nitrogen_warmed_back_reads_what_was_set() =>
        Gen.Select(Gen.Double[200_000, 4_000_000], Gen.Double[-40, 60], Gen.Double[-40, 60]).Sample((p, t1, t2) =>
            Assert.Equal(p, NitrogenHold.Expected(NitrogenHold.Expected(new(p), new(t1), new(t2)), new(t2), new(t1)).Pascals, p * 1e-12));

    // By hand: 1 psi = 6894.8 Pa, and 1 degF = 0.5556 K of 294.26 K on 164.7 psia = 2144 Pa.
    [Fact]
    public void The_smallest_visible_fall_is_a_step_of_the_gauge_and_one_of_the_thermometer()
    {
        var fall = NitrogenHold.SmallestVisibleFall(Given.Psig(150), Given.Fahrenheit(70), Pressure.FromPoundsForcePerSquareInch(1), Given.FahrenheitDegrees(1));
        Assert.Equal(9_039, fall.Pascals, 2.0);
    }

    // By hand: 9039 Pa * 0.05 m3 / 86400 s = 5.231e-3 Pa m3/s.
    [Fact]
    public void A_day_s_hold_of_50_l_shows_5_thousandths_of_a_pascal_cubic_metre_a_second() =>
        Assert.Equal(5.231e-3, NitrogenHold.SmallestVisibleLeak(Pressure.FromPascals(9_039), Volume.FromLiters(50), Duration.FromDays(1)), 1e-6);

    [Fact]
    public void A_hold_of_no_time_is_misuse() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => NitrogenHold.SmallestVisibleLeak(Pressure.FromPascals(9_039), Volume.FromLiters(50), Duration.Zero));

    [Theory]
    [InlineData(140.7, NitrogenHoldVerdict.Holds)]
    [InlineData(139.8, NitrogenHoldVerdict.Holds)]
    [InlineData(139.6, NitrogenHoldVerdict.Leaking)]
    [InlineData(141.6, NitrogenHoldVerdict.Holds)]
    [InlineData(141.8, NitrogenHoldVerdict.ReadsHigh)]
    public void A_hold_is_judged_beyond_what_the_instruments_can_tell(double psig, NitrogenHoldVerdict verdict) =>
        Assert.Equal(verdict, NitrogenHold.Judge(Given.Psig(140.7), Given.Psig(psig), Pressure.FromPoundsForcePerSquareInch(1)));

    [Fact]
    public void A_system_at_rest_stands_at_the_bubble_pressure_of_its_coldest_liquid() =>
        Assert.Equal(210.9, Given.ToPsig(StandingPressure.Expected(Given.Refrigerant("R448A"), Given.Fahrenheit(90))!.Value), 0.05);

    // R-134a at 20 degC: 571.7 kPa (ASHRAE Handbook - Fundamentals, from memory); a kelvin there is about 19 kPa.
    [Theory]
    [InlineData(571_700, StandingVerdict.Saturated)]
    [InlineData(585_000, StandingVerdict.Saturated)]
    [InlineData(600_000, StandingVerdict.Above)]
    [InlineData(558_000, StandingVerdict.Saturated)]
    [InlineData(540_000, StandingVerdict.Below)]
    public void A_standing_pressure_is_compared_with_saturation(double pascals, StandingVerdict verdict) =>
        Assert.Equal(verdict, StandingPressure.Judge(Given.Refrigerant("R134a"), new(pascals), new(20), new(1)));

    // R-448A at 90 degF: 181.5 psig dew, 210.9 bubble; between them a blend may stand with little liquid left.
    [Theory]
    [InlineData(212, StandingVerdict.Saturated)]
    [InlineData(185, StandingVerdict.Saturated)]
    [InlineData(176, StandingVerdict.Below)]
    [InlineData(216, StandingVerdict.Above)]
    public void A_blend_may_stand_anywhere_between_dew_and_bubble(double psig, StandingVerdict verdict) =>
        Assert.Equal(verdict, StandingPressure.Judge(Given.Refrigerant("R448A"), Given.Psig(psig), Given.Fahrenheit(90), Given.FahrenheitDegrees(1)));

    [Fact]
    public void Outside_the_table_nothing_is_judged() => Assert.Null(StandingPressure.Judge(Given.Refrigerant("R744"), new(5_000_000), new(31), new(1)));
}
