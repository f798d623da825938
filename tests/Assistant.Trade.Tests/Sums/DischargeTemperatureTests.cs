using Assistant.Trade.Sums;

namespace Assistant.Trade.Tests.Sums;

public sealed class DischargeTemperatureTests
{
    // R-134a from 0.14 MPa and -10 degC to 0.8 MPa: 50 degC at an isentropic efficiency of 0.939.
    // Cengel and Boles, Thermodynamics, the actual vapour-compression example; from memory.
    [Fact]
    public void The_textbook_compressor_delivers_at_50_degC() =>
        Assert.Equal(50, DischargeTemperature.Expected(Given.Refrigerant("R134a"), new(140_000), new(-10), new(800_000), 0.939)!.Value.Degrees, 0.3);

    [Fact]
    public void A_worse_compressor_delivers_hotter()
    {
        var fluid = Given.Refrigerant("R134a");
        var good = DischargeTemperature.Expected(fluid, new(140_000), new(-10), new(800_000), 1)!.Value;
        var usual = DischargeTemperature.Expected(fluid, new(140_000), new(-10), new(800_000))!.Value;
        Assert.Equal(47.5, good.Degrees, 0.5);
        Assert.InRange(usual.Degrees, 63, 70);
    }

    [Fact]
    public void Beyond_the_vapour_table_nothing_is_said()
    {
        Assert.Null(DischargeTemperature.Expected(Given.Refrigerant("R717"), new(72_000), new(-20), new(1_350_000), 0.6));
        Assert.Null(DischargeTemperature.Expected(Given.Refrigerant("R134a"), new(140_000), new(-30), new(800_000)));
        Assert.Null(DischargeTemperature.Expected(Given.Refrigerant("R134a"), new(140_000), new(-10), new(9_000_000)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.1)]
    public void An_efficiency_outside_nothing_to_one_is_misuse(double efficiency) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DischargeTemperature.Expected(Given.Refrigerant("R134a"), new(140_000), new(-10), new(800_000), efficiency));

    [Fact]
    public void The_usual_alarm_is_225_degF() => Assert.Equal(225, (DischargeTemperature.Alarm.Degrees * 1.8) + 32, 1e-9);
}
