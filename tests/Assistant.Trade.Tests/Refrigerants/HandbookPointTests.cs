using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;

namespace Assistant.Trade.Tests.Refrigerants;

/// <summary>Saturation points of the ASHRAE Handbook - Fundamentals, recalled from memory; the R-448A pair is the trade's own figure.</summary>
public sealed class HandbookPointTests
{
    // Older equations of state differ by a tenth of a per cent or two.
    private const double Relative = 0.002;

    [Theory]
    [InlineData("R134a", -20, 132_730)]
    [InlineData("R134a", 0, 292_800)]
    [InlineData("R134a", 20, 571_700)]
    [InlineData("R134a", 40, 1_016_600)]
    [InlineData("R22", -40, 105_230)]
    [InlineData("R22", 0, 497_990)]
    [InlineData("R22", 40, 1_533_600)]
    [InlineData("R717", -30, 119_430)]
    [InlineData("R717", 0, 429_390)]
    [InlineData("R717", 30, 1_167_200)]
    [InlineData("R744", -20, 1_969_600)]
    [InlineData("R744", 0, 3_485_100)]
    [InlineData("R744", 20, 5_729_100)]
    [InlineData("R290", 0, 474_460)]
    [InlineData("R12", 0, 308_610)]
    [InlineData("R32", 0, 813_100)]
    public void A_pure_fluid_boils_and_condenses_at_its_handbook_pressure(string designation, double degrees, double pascals)
    {
        var table = RefrigerantLibrary.Find(designation)!.Saturation;
        Assert.InRange(table.DewPressure(new(degrees)).Pascals, pascals * (1 - Relative), pascals * (1 + Relative));
        Assert.InRange(table.BubblePressure(new(degrees)).Pascals, pascals * (1 - Relative), pascals * (1 + Relative));
        Assert.Equal(degrees, table.DewTemperature(new(pascals)).Degrees, 0.1);
        Assert.Equal(degrees, table.BubbleTemperature(new(pascals)).Degrees, 0.1);
    }

    [Theory]
    [InlineData("R410A", 0, 800_700, 798_000)]
    [InlineData("R404A", 0, 610_300, 600_200)]
    public void A_blend_has_a_bubble_and_a_lower_dew_pressure(string designation, double degrees, double bubble, double dew)
    {
        var table = RefrigerantLibrary.Find(designation)!.Saturation;
        Assert.InRange(table.BubblePressure(new(degrees)).Pascals, bubble * (1 - Relative), bubble * (1 + Relative));
        Assert.InRange(table.DewPressure(new(degrees)).Pascals, dew * (1 - Relative), dew * (1 + Relative));
    }

    [Fact]
    public void R448A_at_90_degF_is_181_5_psig_by_dew_and_210_9_by_bubble()
    {
        var table = RefrigerantLibrary.Find("R448A")!.Saturation;
        var ninety = new CelsiusTemperature(UnitOfMeasure.Fahrenheit.ToCanonical(90));
        Assert.Equal(181.5, Psig(table.DewPressure(ninety)), 0.05);
        Assert.Equal(210.9, Psig(table.BubblePressure(ninety)), 0.05);
    }

    [Fact]
    public void R134a_at_0_degC_has_its_handbook_densities_enthalpies_and_entropies()
    {
        var table = RefrigerantLibrary.Find("R134a")!.Saturation;
        var zero = new CelsiusTemperature(0);
        Assert.Equal(1294.8, table.LiquidDensity(zero).KilogramsPerCubicMeter, 0.1);
        Assert.Equal(14.428, table.VapourDensity(zero).KilogramsPerCubicMeter, 0.01);
        Assert.Equal(200.00, table.LiquidEnthalpy(zero).KilojoulesPerKilogram, 0.01);
        Assert.Equal(398.60, table.VapourEnthalpy(zero).KilojoulesPerKilogram, 0.01);
        Assert.Equal(1.0000, table.LiquidEntropy(zero).KilojoulesPerKilogramKelvin, 0.0001);
        Assert.Equal(1.7271, table.VapourEntropy(zero).KilojoulesPerKilogramKelvin, 0.0001);
    }

    private static double Psig(AbsolutePressure pressure) => UnitOfMeasure.Psig.FromCanonical(pressure.ToGauge(AbsolutePressure.StandardAtmosphere).Pascals / 1000);
}
