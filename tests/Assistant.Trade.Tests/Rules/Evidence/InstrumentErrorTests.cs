using Assistant.Trade.Facts;
using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Evidence;
using static Assistant.Trade.Facts.FactCatalogue;

namespace Assistant.Trade.Tests.Rules.Evidence;

/// <summary>What two people's instruments may differ by. Common practice: 1 psi on a gauge, 1 degF on a thermometer, 2 % on a clamp meter.</summary>
public sealed class InstrumentErrorTests
{
    [Theory]
    [InlineData(22, 23, true)]
    [InlineData(22, 23.1, false)]
    [InlineData(23.1, 22, false)]
    public void Two_gauges_agree_within_a_pound(double one, double other, bool agree) =>
        Assert.Equal(agree, InstrumentError.Agree(new Reading(SuctionPressure, one, UnitOfMeasure.Psig), new Reading(SuctionPressure, other, UnitOfMeasure.Psig)));

    [Theory]
    [InlineData(38, 39, true)]
    [InlineData(38, 39.2, false)]
    public void Two_thermometers_agree_within_a_degree_Fahrenheit(double one, double other, bool agree) =>
        Assert.Equal(agree, InstrumentError.Agree(new Reading(BoxTemperature, one, UnitOfMeasure.Fahrenheit), new Reading(BoxTemperature, other, UnitOfMeasure.Fahrenheit)));

    // 22 psig are 1.517 bar.
    [Theory]
    [InlineData(1.52, true)]
    [InlineData(1.40, false)]
    public void They_agree_across_units(double bar, bool agree) =>
        Assert.Equal(agree, InstrumentError.Agree(new Reading(SuctionPressure, 22, UnitOfMeasure.Psig), new Reading(SuctionPressure, bar, UnitOfMeasure.Bar)));

    [Theory]
    [InlineData(10.2, true)]
    [InlineData(10.4, false)]
    public void Two_clamp_meters_agree_within_two_hundredths(double amperes, bool agree) =>
        Assert.Equal(agree, InstrumentError.Agree(new Reading(CompressorCurrent, 10, UnitOfMeasure.Ampere), new Reading(CompressorCurrent, amperes, UnitOfMeasure.Ampere)));

    [Fact]
    public void Of_two_words_only_the_same_agree()
    {
        Assert.True(InstrumentError.Agree(new Observation(SightGlass, "clear"), new Observation(SightGlass, "clear")));
        Assert.False(InstrumentError.Agree(new Observation(SightGlass, "clear"), new Observation(SightGlass, "flashing")));
    }
}
