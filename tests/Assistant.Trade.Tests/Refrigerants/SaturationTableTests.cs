using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

public sealed class SaturationTableTests
{
    private static readonly SaturationTable R134a = RefrigerantLibrary.Find("R134a")!.Saturation;

    [Fact]
    public void The_range_is_the_table_s_with_both_ends()
    {
        Assert.Equal(-75, R134a.Temperatures.Lowest.Degrees);
        Assert.Equal(100, R134a.Temperatures.Highest.Degrees);
        Assert.True(R134a.TryDewPressure(new(100), out var top));
        Assert.Equal(3_972_000, top.Pascals, 5_000.0);
        Assert.True(R134a.TryDewPressure(new(-75), out var bottom));
        Assert.Equal(5_477.7166, bottom.Pascals, 1e-6);
    }

    [Theory]
    [InlineData(-75.001)]
    [InlineData(100.001)]
    [InlineData(double.NaN)]
    public void A_temperature_outside_is_refused_with_the_range(double degrees)
    {
        Assert.False(R134a.TryDewPressure(new(degrees), out _));
        Assert.False(R134a.TryBubblePressure(new(degrees), out _));
        var refused = Assert.Throws<OutOfTableException>(() => R134a.LiquidDensity(new(degrees)));
        Assert.Contains("from -75 to 100 degC", refused.Message, StringComparison.Ordinal);
        Assert.StartsWith("R134a: saturation temperature ", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5_400)]
    [InlineData(4_059_280)]
    [InlineData(-1)]
    public void A_pressure_outside_is_refused_with_the_range(double pascals)
    {
        Assert.False(R134a.TryDewTemperature(new(pascals), out _));
        Assert.False(R134a.TryBubbleTemperature(new(pascals), out _));
        var refused = Assert.Throws<OutOfTableException>(() => R134a.DewTemperature(new(pascals)));
        Assert.Contains("runs from 5477.717 to ", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void R744_has_no_liquid_below_its_triple_point() =>
        Assert.Equal(-56, RefrigerantLibrary.Find("R744")!.Saturation.Temperatures.Lowest.Degrees);
}
