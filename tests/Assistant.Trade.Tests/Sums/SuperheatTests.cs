using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Sums;
using CsCheck;

namespace Assistant.Trade.Tests.Sums;

public sealed class SuperheatTests
{
    // R-134a condenses at 292.8 kPa and 0 degC: ASHRAE Handbook - Fundamentals, from memory.
    [Fact]
    public void A_line_of_6_degC_at_the_dew_pressure_of_0_degC_has_6_K() =>
        Assert.Equal(6, Superheat.Of(new(6), new(292_800), Given.Refrigerant("R134a"))!.Value.Kelvins, 0.01);

    // R-448A at 181.5 psig has its dew point at 90 degF and its bubble point 10 degF lower: the dew point counts.
    [Fact]
    public void A_blend_s_superheat_counts_from_its_dew_point() =>
        Assert.Equal(10 / 1.8, Superheat.Of(Given.Fahrenheit(100), Given.Psig(181.5), Given.Refrigerant("R448A"))!.Value.Kelvins, 0.02);

    [Fact]
    public void A_line_colder_than_the_dew_point_is_negative() =>
        Assert.Equal(-2, Superheat.Of(new(-2), new(292_800), Given.Refrigerant("R134a"))!.Value.Kelvins, 0.01);

    [Fact]
    public void A_pressure_outside_the_table_has_none() => Assert.Null(Superheat.Of(new(0), new(1_000), Given.Refrigerant("R134a")));

    [Fact]
    public void A_warmer_line_has_just_as_much_more_superheat() =>
        Gen.Select(Gen.Int[0, RefrigerantLibrary.All.Length - 1], Gen.Double[0.05, 0.9], Gen.Double[-20, 40], Gen.Double[0, 30]).Sample((i, share, line, warmer) =>
        {
            var refrigerant = RefrigerantLibrary.All[i];
            var range = refrigerant.Saturation.DewPressures;
            var p = new AbsolutePressure(range.Lowest.Pascals + ((range.Highest.Pascals - range.Lowest.Pascals) * share));
            var (one, other) = (Superheat.Of(new(line), p, refrigerant)!.Value, Superheat.Of(new(line + warmer), p, refrigerant)!.Value);
            Assert.Equal(warmer, other.Kelvins - one.Kelvins, 1e-9);
        });
}
