using Assistant.Trade.Rules;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Tests.Rules.Derivation;

namespace Assistant.Trade.Tests.Rules;

/// <summary>Which sentence a number gets: under, in or over what is usual. The ends themselves are usual.</summary>
public class ReasonWordTests
{
    // Usual: a subcooling of 1.7 to 4.8 K; goods 4 K from the air; an equalised plant 8 K from the coldest place; a resting coil 5 to 8 K under its air.
    [Theory]
    [InlineData(nameof(Symptom.Subcooling), 1.69, "low")]
    [InlineData(nameof(Symptom.Subcooling), 1.7, "normal")]
    [InlineData(nameof(Symptom.Subcooling), 4.8, "normal")]
    [InlineData(nameof(Symptom.Subcooling), 4.81, "high")]
    [InlineData(nameof(Symptom.ProductOverBox), -4.1, "low")]
    [InlineData(nameof(Symptom.ProductOverBox), -3.9, "normal")]
    [InlineData(nameof(Symptom.ProductOverBox), 3.9, "normal")]
    [InlineData(nameof(Symptom.ProductOverBox), 4.1, "high")]
    [InlineData(nameof(Symptom.EqualisedOverColdest), -8.1, "low")]
    [InlineData(nameof(Symptom.EqualisedOverColdest), -7.9, "normal")]
    [InlineData(nameof(Symptom.EqualisedOverColdest), 7.9, "normal")]
    [InlineData(nameof(Symptom.EqualisedOverColdest), 8.1, "high")]
    [InlineData(nameof(Symptom.RestingTd), 4.9, "low")]
    [InlineData(nameof(Symptom.RestingTd), 6, "normal")]
    [InlineData(nameof(Symptom.RestingTd), 8.1, "high")]
    [InlineData(nameof(Symptom.RestingGap), 2.9, "low")]
    [InlineData(nameof(Symptom.RestingGap), 90, "normal")]
    [InlineData(nameof(Symptom.BoxOverCall), -0.1, "low")]
    [InlineData(nameof(Symptom.BoxOverCall), 0, "normal")]
    [InlineData(nameof(Symptom.BoxOverCall), 0.1, "high")]
    public void A_number_is_called_low_normal_or_high_by_what_is_usual(string symptom, double value, string level)
    {
        var named = Enum.Parse<Symptom>(symptom);

        Assert.Equal($"reason.{Codes.KebabOf(symptom)}-{level}", Reasons.Of(named, SymptomReadings.State(""), new(value, 0)).Key);
    }

    [Theory]
    [InlineData(nameof(Symptom.Subcooling), 5.2)]
    [InlineData(nameof(Symptom.Subcooling), 1.5)]
    [InlineData(nameof(Symptom.CompressorEfficiency), 0.86)]
    public void What_speaks_for_a_sound_plant_is_in_order(string symptom, double value) =>
        Assert.Equal($"reason.{Codes.KebabOf(symptom)}-normal", Reasons.Of(Enum.Parse<Symptom>(symptom), SymptomReadings.State(""), new(value, 0), isInOrder: true).Key);

    [Theory]
    [InlineData("ambient_temperature 20 degC")]
    [InlineData("saturated_condensing_temperature 40 degC")]
    [InlineData("")]
    public void Of_a_split_said_outright_no_temperature_is_told_that_was_not_read(string half)
    {
        var reason = Reasons.Of(Symptom.HeadExcess, SymptomReadings.State($"condenser_split 20 K;design_condenser_split 14 K;{half}"), new(6, 0));

        Assert.Equal("reason.split-share-high", reason.Key);
        Assert.Equal([("split", 20.0), ("expected", 14.0)], reason.Parts.Select(p => (p.Name, p.Amount!.Value.Canonical)));
    }

    [Theory]
    [InlineData(-4, "reason.split-share-low")]
    [InlineData(0, "reason.split-share-normal")]
    [InlineData(3, "reason.split-share-high")]
    public void A_split_said_outright_is_called_low_normal_or_high_as_the_head_would_be(double excess, string key) =>
        Assert.Equal(key, Reasons.Of(Symptom.HeadExcess, SymptomReadings.State("condenser_split 20 K"), new(excess, 0)).Key);

    [Theory]
    [InlineData("differential 2 K", 2)]
    [InlineData("", 1.67)]
    public void A_setting_is_told_with_its_own_differential_or_the_usual_one(string differential, double kelvins)
    {
        var reason = Reasons.Of(Symptom.SettingExcess, SymptomReadings.State($"application cooler;setpoint 6 degC;{differential}"), new(3, 0));

        Assert.Equal(kelvins, reason.Parts.Single(p => p.Name == "differential").Amount!.Value.Canonical, 0.01);
    }

    [Fact]
    public void The_airs_fall_and_the_condensers_share_are_told_as_they_were_read()
    {
        var air = Reasons.Of(Symptom.AirShare, SymptomReadings.State("refrigerant R134a;evaporator_air_in 12 degC;evaporator_air_out 6 degC;suction_pressure_at_evaporator 1.92 bar"), new(0.5, 0));
        var split = Reasons.Of(Symptom.SplitShare, SymptomReadings.State("condenser_split 21 K"), new(1.5, 0));

        Assert.Equal([("drop", 6.0), ("td", 12.0)], air.Parts.Select(p => (p.Name, Math.Round(p.Amount!.Value.Canonical, 0))));
        Assert.Equal([("split", 21.0), ("expected", 14.0)], split.Parts.Select(p => (p.Name, p.Amount!.Value.Canonical)));
    }
}
