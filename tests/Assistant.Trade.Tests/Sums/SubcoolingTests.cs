using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

public sealed class SubcoolingTests
{
    // R-134a boils at 1016.6 kPa and 40 degC: ASHRAE Handbook - Fundamentals, from memory.
    [Fact]
    public void Liquid_of_35_degC_at_the_bubble_pressure_of_40_degC_has_5_K() =>
        Assert.Equal(5, Subcooling.Of(new(35), new(1_016_600), Given.Refrigerant("R134a"))!.Value.Kelvins, 0.01);

    // R-448A at 210.9 psig has its bubble point at 90 degF; its dew point is 10 degF higher and does not count.
    [Fact]
    public void A_blend_s_subcooling_counts_from_its_bubble_point() =>
        Assert.Equal(8 / 1.8, Subcooling.Of(Given.Fahrenheit(82), Given.Psig(210.9), Given.Refrigerant("R448A"))!.Value.Kelvins, 0.02);

    [Fact]
    public void A_pressure_outside_the_table_has_none() => Assert.Null(Subcooling.Of(new(0), new(9_000_000), Given.Refrigerant("R134a")));
}
