using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Common practice.</summary>
public sealed class SuperheatTargetTests
{
    [Theory]
    [InlineData(false, 0, 8, 12, 0)]
    [InlineData(true, 0, 6, 8, 0)]
    [InlineData(false, 10, 6, 10, 7)]
    [InlineData(false, 15, 8, 12, 10.5)]
    [InlineData(true, 8, 4.8, 8, 5.6)]
    public void The_range_follows_the_room_and_the_td(bool freezer, double td, double low, double high, double aim)
    {
        var target = SuperheatTarget.AtEvaporator(freezer, td > 0 ? Given.FahrenheitDegrees(td) : null);
        Assert.Equal(low, target.Low.Kelvins * 1.8, 1e-9);
        Assert.Equal(high, target.High.Kelvins * 1.8, 1e-9);
        Assert.Equal(aim, (target.Aim?.Kelvins ?? 0) * 1.8, 1e-9);
    }

    [Fact]
    public void The_compressor_wants_at_least_20_degF() => Assert.Equal(20, SuperheatTarget.LeastAtCompressor.Kelvins * 1.8, 1e-9);
}
