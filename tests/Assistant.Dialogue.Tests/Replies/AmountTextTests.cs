using Assistant.Dialogue.Replies;
using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Replies;

public sealed class AmountTextTests
{
    [Theory]
    [InlineData(5, Dimension.Temperature, "41 °F", "5 °C")]
    [InlineData(-40, Dimension.Temperature, "-40 °F", "-40 °C")]
    [InlineData(-17.78, Dimension.Temperature, "0 °F", "-17.8 °C")]
    [InlineData(5.0, Dimension.TemperatureDifference, "9 °F", "5 K")]
    [InlineData(26.2, Dimension.TemperatureDifference, "47 °F", "26 K")]
    [InlineData(806.7, Dimension.Pressure, "117 psig", "8.1 bar")]
    [InlineData(17.2, Dimension.Pressure, "2.5 psig", "0.17 bar")]
    [InlineData(-28.78, Dimension.Pressure, "8.5 inHg vacuum", "-0.29 bar")]
    [InlineData(-0.02, Dimension.Pressure, "0 psig", "0.00 bar")]
    [InlineData(66.66, Dimension.Vacuum, "500 micron", "67 Pa")]
    [InlineData(5.67, Dimension.Mass, "12.5 lb", "5.67 kg")]
    [InlineData(0.25, Dimension.Mass, "8.8 oz", "250 g")]
    [InlineData(1600, Dimension.Length, "5249 ft", "1600 m")]
    [InlineData(90, Dimension.Time, "90 s", "90 s")]
    [InlineData(1200, Dimension.Time, "20 min", "20 min")]
    [InlineData(3.42, Dimension.Ratio, "3.4", "3.4")]
    [InlineData(11.25, Dimension.Current, "11.3 A", "11.3 A")]
    public void An_amount_is_written_in_the_units_and_digits_of_the_trade(double canonical, Dimension dimension, string us, string metric)
    {
        var amount = new Amount(canonical, dimension);

        Assert.Equal((us, metric), (AmountText.Written(amount, UnitSystem.Us), AmountText.Written(amount, UnitSystem.Metric)));
    }

    [Theory]
    [InlineData(-28.78, Dimension.Pressure, "8.5 inches of vacuum")]
    [InlineData(806.7, Dimension.Pressure, "117 P S I")]
    [InlineData(-20, Dimension.Temperature, "minus 4 degrees")]
    public void An_amount_is_spoken_without_signs_the_ear_cannot_hear(double canonical, Dimension dimension, string spoken) =>
        Assert.Equal(spoken, AmountText.Spoken(new Amount(canonical, dimension), UnitSystem.Us));

    [Fact]
    public void A_reading_is_repeated_as_it_was_said()
    {
        Assert.Equal("9.2 °C", AmountText.Written(new Reading(FactCatalogue.BoxTemperature, 9.2, UnitOfMeasure.Celsius)));
        Assert.Equal("24 bar", AmountText.Written(new Reading(FactCatalogue.DischargePressure, 24, UnitOfMeasure.Bar)));
        Assert.Equal("minus 3.5 degrees", AmountText.Spoken(new Reading(FactCatalogue.AmbientTemperature, -3.5, UnitOfMeasure.Celsius)));
    }
}
