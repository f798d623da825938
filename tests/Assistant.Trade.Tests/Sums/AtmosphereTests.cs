using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

public sealed class AtmosphereTests
{
    // ISO 2533 table values over geopotential altitude.
    [Theory]
    [InlineData(0, 101_325)]
    [InlineData(500, 95_461)]
    [InlineData(1000, 89_874.6)]
    [InlineData(2000, 79_495.2)]
    [InlineData(3000, 70_108.5)]
    [InlineData(5000, 54_019.9)]
    [InlineData(-500, 107_478)]
    public void The_barometer_follows_the_standard_atmosphere(double meters, double pascals) =>
        Assert.Equal(pascals, Atmosphere.BarometricPressure(meters).Pascals, 10.0);

    // The trade's own figure: at 1600 m an ignored altitude is 2.6 psi.
    [Fact]
    public void At_1600_m_an_ignored_altitude_is_2_6_psi() =>
        Assert.Equal(2.6, (101_325 - Atmosphere.BarometricPressure(1600).Pascals) / 6894.757, 0.05);
}
