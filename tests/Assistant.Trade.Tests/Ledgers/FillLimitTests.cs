using Assistant.Trade.Ledgers;
using UnitsNet;

namespace Assistant.Trade.Tests.Ledgers;

public class FillLimitTests
{
    // 80 % of the volume at 25 degC / 77 degF: 40 CFR 82 and AHRI Guideline K, from memory.
    // A cylinder of 21.6 kg water capacity (47.6 lb, the usual 50 lb size) and a liquid of 1100 kg/m3: 0.8 · 21.6 · 1.1 = 19.008 kg, by hand.
    [Fact]
    public void Eighty_percent_of_the_volume_is_the_most_a_cylinder_may_hold() =>
        Assert.Equal(new Grams(19_008), FillLimit.MaximumContents(new Grams(21_600), Density.FromKilogramsPerCubicMeter(1100)));

    [Fact]
    public void The_limit_is_rounded_down_to_the_gram() =>
        Assert.Equal(new Grams(880), FillLimit.MaximumContents(new Grams(1001), Density.FromKilogramsPerCubicMeter(1100)));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_water_capacity_must_be_positive(long grams) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FillLimit.MaximumContents(new Grams(grams), Density.FromKilogramsPerCubicMeter(1100)));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_density_must_be_positive(double density) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FillLimit.MaximumContents(new Grams(1000), Density.FromKilogramsPerCubicMeter(density)));
}
