using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Refrigerants;
using Assistant.Trade.Rules.Plausibility;

namespace Assistant.Trade.Tests.Rules.Plausibility;

/// <summary>Each reading as the temperature it bears witness to. R134a: 1.92 bar is 0 degC by the gauge; R448A at 90 degF (32.2 degC) holds 181.5 psig by the dew point and 210.9 by the bubble point (from memory).</summary>
public class TestimonyTests
{
    private static readonly AbsolutePressure SeaLevel = new(101325);

    [Theory]
    [InlineData("suction_pressure 1.92 bar", nameof(Witness.Suction), "R134a", 0)]
    [InlineData("box_temperature 4 degC", nameof(Witness.Box), "R134a", 4)]
    [InlineData("box_temperature 4 degC", nameof(Witness.Box), "none", 4)]
    [InlineData("discharge_pressure 181.5 psig", nameof(Witness.Condensing), "R448A", 32.2)]
    [InlineData("high_side_standing_pressure 210.9 psig", nameof(Witness.HighSideAtRest), "R448A", 32.2)]
    [InlineData("liquid_pressure 210.9 psig", nameof(Witness.LiquidBubble), "R448A", 32.2)]
    public void A_pressure_speaks_as_its_saturation_temperature(string reading, string witness, string refrigerant, double degrees) =>
        Assert.Equal(degrees, Of(reading, witness, refrigerant, SeaLevel), 0.2);

    // Off the table a pressure is far too cold or far too warm, and says so by the table's own end.
    [Theory]
    [InlineData("suction_pressure -1.0 bar", nameof(Witness.Suction), true)]
    [InlineData("suction_pressure 60 bar", nameof(Witness.Suction), false)]
    [InlineData("liquid_pressure -1.0 bar", nameof(Witness.LiquidBubble), true)]
    [InlineData("liquid_pressure 60 bar", nameof(Witness.LiquidBubble), false)]
    public void Off_the_table_it_speaks_as_the_tables_end(string reading, string witness, bool isCold)
    {
        var ends = RefrigerantLibrary.Find("R134a")!.Saturation.Temperatures;

        Assert.Equal(isCold ? ends.Lowest.Degrees : ends.Highest.Degrees, Of(reading, witness, "R134a", SeaLevel));
    }

    [Theory]
    [InlineData("suction_pressure 30 bar", "R744")]
    [InlineData("suction_pressure 30 bar", "none")]
    public void Without_a_table_or_over_the_critical_point_a_pressure_says_nothing(string reading, string refrigerant) =>
        Assert.True(double.IsNaN(Of(reading, nameof(Witness.Suction), refrigerant, SeaLevel)));

    [Fact]
    public void The_site_s_own_air_is_added_to_a_gauge_and_not_to_an_absolute_reading()
    {
        // 80 kPa of air at about 1950 m (ISO 2533): a gauge then reads 0.213 bar more for the same temperature.
        var high = new AbsolutePressure(80000);

        Assert.Equal(0, Of("suction_pressure 2.133 bar", nameof(Witness.Suction), "R134a", high), 0.2);
        Assert.Equal(0, Of("suction_pressure 2.93 bara", nameof(Witness.Suction), "R134a", high), 0.2);
        Assert.Equal(0, Of("suction_pressure 2.93 bara", nameof(Witness.Suction), "R134a", SeaLevel), 0.2);
    }

    private static double Of(string reading, string witness, string refrigerant, AbsolutePressure barometer) =>
        Testimony.Of(Enum.Parse<Witness>(witness), (Reading)FactsOf.Value(reading), barometer, RefrigerantLibrary.Find(refrigerant));
}
