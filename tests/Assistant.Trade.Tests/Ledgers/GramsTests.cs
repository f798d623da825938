using Assistant.Trade.Ledgers;
using UnitsNet;

namespace Assistant.Trade.Tests.Ledgers;

public class GramsTests
{
    // 1 lb = 453.59237 g exactly, 1 oz a sixteenth of it (international avoirdupois pound, 1959).
    [Theory]
    [InlineData(1, 0, 454)]
    [InlineData(24, 0, 10_886)]
    [InlineData(12, 4, 5_557)]
    public void Pounds_and_ounces_become_the_nearest_gram(double pounds, double ounces, long grams) =>
        Assert.Equal(new Grams(grams), Grams.From(Mass.FromPounds(pounds) + Mass.FromOunces(ounces)));

    [Fact]
    public void Half_a_gram_rounds_away_from_zero()
    {
        Assert.Equal(new Grams(3), Grams.From(Mass.FromGrams(2.5)));
        Assert.Equal(new Grams(-3), Grams.From(Mass.FromGrams(-2.5)));
    }

    [Theory]
    [InlineData(1.1e9)]
    [InlineData(-1.1e9)]
    public void What_is_no_weighable_mass_is_refused(double grams) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Grams.From(Mass.FromGrams(grams)));

    [Fact]
    public void A_sum_that_overflows_is_an_error_and_not_a_negative_mass() =>
        Assert.Throws<OverflowException>(() => new Grams(long.MaxValue) + new Grams(1));
}
