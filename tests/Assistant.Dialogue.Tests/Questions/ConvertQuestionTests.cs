using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;

namespace Assistant.Dialogue.Tests.Questions;

/// <summary>Exact unit definitions: 1 psi = 6.894757 kPa, 1 lb = 0.45359237 kg, 1 micron = 0.133322 Pa.</summary>
public sealed class ConvertQuestionTests
{
    [Theory]
    [InlineData(34, "degF", Dimension.Temperature, "degC", "34 °F is 1.11 °C.")]
    [InlineData(-18, "degC", Dimension.Temperature, "degF", "-18 °C is -0.4 °F.")]
    [InlineData(150, "kPa", Dimension.Pressure, "psig", "150 kPa is 21.8 psig.")]
    [InlineData(24, "bar", Dimension.Pressure, "psig", "24 bar is 348 psig.")]
    [InlineData(8.5, "inHg vacuum", Dimension.Pressure, "psig", "8.5 inHg vacuum is -4.17 psig.")]
    [InlineData(10, "K", Dimension.TemperatureDifference, "degF", "10 K is 18 °F.")]
    [InlineData(500, "micron", Dimension.Vacuum, "Pa", "500 micron is 66.7 Pa.")]
    public void A_number_is_said_in_the_unit_asked_for(double value, string unit, Dimension dimension, string to, string said) =>
        Assert.Equal(said, (new Call("convert") { To = UnitOfMeasure.Find(to, dimension) }).With(value, UnitOfMeasure.Find(unit, dimension)).Said());

    [Theory]
    [InlineData(10, "lb", Dimension.Mass, "10 lb is 4.54 kg.")]
    [InlineData(2, "kg", Dimension.Mass, "2 kg is 4.41 lb.")]
    [InlineData(117, "psig", Dimension.Pressure, "117 psig is 8.07 bar.")]
    [InlineData(1600, "m", Dimension.Length, "1600 m is 5249 ft.")]
    public void Without_a_unit_asked_for_it_is_the_other_system_s(double value, string unit, Dimension dimension, string said) =>
        Assert.Equal(said, new Call("convert").With(value, UnitOfMeasure.Find(unit, dimension)).Said());

    // At 1600 m the air is 83.5 kPa = 12.1 psi: 10 psig are 22.1 psia there, 24.7 at sea level.
    [Theory]
    [InlineData(0, "10 psig is 24.7 psia.")]
    [InlineData(1600, "10 psig is 22.1 psia.")]
    public void From_gauge_to_absolute_the_site_s_air_counts(double meters, string said) =>
        Assert.Equal(said, (new Call("convert") { To = UnitOfMeasure.Psia }).With(10, UnitOfMeasure.Psig).Knowing(FactCatalogue.Altitude, meters, UnitOfMeasure.Meter).Said());

    [Fact]
    public void From_absolute_to_gauge_the_site_s_air_counts() =>
        Assert.Matches("^22.1 psia is (9.99|10) psig.$", (new Call("convert") { To = UnitOfMeasure.Psig }).With(22.1, UnitOfMeasure.Psia).Knowing(FactCatalogue.Altitude, 1600, UnitOfMeasure.Meter).Said());

    [Fact]
    public void A_difference_asked_for_in_degrees_stays_a_difference() =>
        Assert.Equal("18 °F is 10 K.", (new Call("convert") { To = UnitOfMeasure.KelvinDifference }).With(18, UnitOfMeasure.FahrenheitDifference).Said());

    [Fact]
    public void Another_kind_of_quantity_is_refused() =>
        Assert.StartsWith("10 psig cannot be said in °F", (new Call("convert") { To = UnitOfMeasure.Fahrenheit }).With(10, UnitOfMeasure.Psig).Said(), StringComparison.Ordinal);

    [Fact]
    public void A_bare_number_or_none_is_asked_about()
    {
        Assert.Equal("34 in which unit?", new Call("convert").With(34, null).Answered().Needs!.Full);
        Assert.Equal("Which number?", new Call("convert").Answered().Needs!.Full);
    }
}
