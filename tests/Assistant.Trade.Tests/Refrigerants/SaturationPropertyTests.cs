using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using CsCheck;

namespace Assistant.Trade.Tests.Refrigerants;

public sealed class SaturationPropertyTests
{
    private static readonly Gen<(SaturationTable Table, double Share)> AnyPoint =
        Gen.Select(Gen.Int[0, RefrigerantLibrary.All.Length - 1], Gen.Double[0, 1], (i, share) => (RefrigerantLibrary.All[i].Saturation, share));

    [Fact]
    public void A_pressure_of_a_temperature_gives_that_temperature_back_within_a_microkelvin() =>
        AnyPoint.Sample(p =>
        {
            var t = At(p.Table, p.Share);
            Assert.Equal(t.Degrees, p.Table.DewTemperature(p.Table.DewPressure(t)).Degrees, 1e-6);
            Assert.Equal(t.Degrees, p.Table.BubbleTemperature(p.Table.BubblePressure(t)).Degrees, 1e-6);
        }, iter: 2000);

    [Fact]
    public void Pressures_and_vapour_density_rise_with_temperature_and_liquid_density_falls() =>
        Gen.Select(AnyPoint, Gen.Double[1e-4, 0.2]).Sample((p, gap) =>
        {
            var (cold, warm) = (At(p.Table, p.Share * (1 - gap)), At(p.Table, (p.Share * (1 - gap)) + gap));
            Assert.True(p.Table.DewPressure(warm) > p.Table.DewPressure(cold));
            Assert.True(p.Table.BubblePressure(warm) > p.Table.BubblePressure(cold));
            Assert.True(p.Table.VapourDensity(warm) > p.Table.VapourDensity(cold));
            Assert.True(p.Table.LiquidDensity(warm) < p.Table.LiquidDensity(cold));
        }, iter: 2000);

    [Fact]
    public void Dew_is_never_above_bubble_pressure_nor_below_bubble_temperature() =>
        AnyPoint.Sample(p =>
        {
            var t = At(p.Table, p.Share);
            Assert.True(p.Table.DewPressure(t).Pascals <= p.Table.BubblePressure(t).Pascals * (1 + 1e-6));
            if (p.Table.TryBubbleTemperature(p.Table.DewPressure(t), out var bubble))
            {
                Assert.True(bubble.Degrees <= t.Degrees + 1e-4);
            }
        }, iter: 2000);

    private static CelsiusTemperature At(SaturationTable table, double share)
    {
        var (low, high) = (table.Temperatures.Lowest.Degrees, table.Temperatures.Highest.Degrees);
        return new(Math.Min(high, low + ((high - low) * share)));
    }
}
