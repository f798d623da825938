using Assistant.Trade.Sums;
using CsCheck;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Split, TD, ratio, lowest ambient and flooding.</summary>
public sealed class CondenserSumsTests
{
    [Fact]
    public void Condensing_at_57_degC_over_air_of_31_is_a_split_of_26_K() => Assert.Equal(26, CondenserSplit.Of(new(57), new(31)).Kelvins, 1e-9);

    [Fact]
    public void Air_of_3_degC_on_a_coil_at_minus_4_is_a_td_of_7_K() => Assert.Equal(7, EvaporatorTd.Of(new(3), new(-4)).Kelvins, 1e-9);

    [Fact]
    public void The_usual_ranges_are_the_trade_s()
    {
        Assert.Equal((11.1111, 16.6667), (Math.Round(CondenserSplit.Usual.Low.Kelvins, 4), Math.Round(CondenserSplit.Usual.High.Kelvins, 4)));
        Assert.Equal((4.4444, 6.6667), (Math.Round(EvaporatorTd.Usual.Low.Kelvins, 4), Math.Round(EvaporatorTd.Usual.High.Kelvins, 4)));
    }

    // 14 psig and 217 psig at sea level are 28.7 and 231.7 psia: 8.07 by hand.
    [Fact]
    public void The_compression_ratio_is_of_absolute_pressures() =>
        Assert.Equal(8.07, CompressionRatio.Of(Given.Psig(217), Given.Psig(14)), 0.01);

    [Fact]
    public void A_suction_of_nothing_has_no_ratio() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CompressionRatio.Of(new(100_000), new(0)));

    // Common practice: 90 degF less 30 is the usual 60 degF.
    [Fact]
    public void Ninety_degF_held_with_a_split_of_30_needs_no_help_down_to_60_degF() =>
        Assert.Equal(Given.Fahrenheit(60).Degrees, MinimumAmbient.Of(MinimumAmbient.UsualCondensing, Given.FahrenheitDegrees(30)).Degrees, 1e-9);

    // The trade's own figure, and hand arithmetic for the others.
    [Theory]
    [InlineData(0, 1, 0.6667)]
    [InlineData(30, 1, 0.5)]
    [InlineData(60, 1, 0)]
    [InlineData(80, 1, 0)]
    [InlineData(95, 1, 0)]
    [InlineData(0, 0.6, 0.8)]
    public void A_condenser_held_at_90_degF_with_a_split_of_30_floods_with_the_cold(double ambient, double rejection, double fraction) =>
        Assert.Equal(fraction, FloodedCondenser.Fraction(Given.Fahrenheit(90), Given.FahrenheitDegrees(30), Given.Fahrenheit(ambient), rejection), 0.0001);

    [Fact]
    public void The_active_part_of_a_flooded_condenser_still_rejects_the_load() =>
        Gen.Select(Gen.Double[20, 45], Gen.Double[5, 20], Gen.Double[-40, 40], Gen.Double[0.2, 1]).Sample((held, split, ambient, load) =>
        {
            var flooded = FloodedCondenser.Fraction(new(held), new(split), new(ambient), load);
            Assert.InRange(flooded, 0, 1);
            if (flooded > 0)
            {
                Assert.Equal(load * split, (1 - flooded) * (held - ambient), 1e-9);
            }
        });

    // 36 tubes of 2 m and 8 mm bore: 36 * 2 * 50.265e-6 m2 = 3.619 l.
    [Fact]
    public void A_condenser_s_volume_comes_from_its_tubes() =>
        Assert.Equal(3.619, CondenserVolume.FromTubes(36, UnitsNet.Length.FromMeters(2), UnitsNet.Length.FromMillimeters(8)).Liters, 0.001);
}
