using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

public sealed class WaterVapourTests
{
    // Murphy and Koop 2005, Q. J. R. Meteorol. Soc. 131, 1539, table C1, recalled from memory.
    [Theory]
    [InlineData(180, 0.0053975)]
    [InlineData(210, 0.70202)]
    [InlineData(240, 27.272)]
    [InlineData(273.15, 611.154)]
    public void Over_ice_it_is_the_published_value(double kelvins, double pascals) =>
        Assert.Equal(1, WaterVapour.OverIce(new(kelvins - 273.15)).Pascals / pascals, 0.0001);

    [Theory]
    [InlineData(180, 0.011239)]
    [InlineData(210, 1.2335)]
    [InlineData(240, 37.667)]
    [InlineData(273.15, 611.213)]
    [InlineData(300, 3536.8)]
    public void Over_liquid_it_is_the_published_value(double kelvins, double pascals) =>
        Assert.Equal(1, WaterVapour.OverLiquid(new(kelvins - 273.15)).Pascals / pascals, 0.0001);

    // The trade's own figures over ice.
    [Theory]
    [InlineData(32, 4580)]
    [InlineData(14, 1950)]
    [InlineData(0, 957)]
    [InlineData(-20, 320)]
    public void In_microns_it_is_what_a_vacuum_gauge_shows_over_ice(double fahrenheit, double microns) =>
        Assert.Equal(microns, WaterVapour.OverIce(Given.Fahrenheit(fahrenheit)).Pascals / 0.133322368, 5.0);

    [Fact]
    public void What_lies_there_is_ice_below_freezing_and_water_above()
    {
        Assert.Equal(WaterVapour.OverIce(new(-10)), WaterVapour.At(new(-10)));
        Assert.Equal(WaterVapour.OverLiquid(new(10)), WaterVapour.At(new(10)));
    }
}
