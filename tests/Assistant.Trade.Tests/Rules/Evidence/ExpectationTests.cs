using Assistant.Trade.Quantities;
using Assistant.Trade.Rules.Evidence;
using Assistant.Trade.Rules.Thresholds;

namespace Assistant.Trade.Tests.Rules.Evidence;

/// <summary>How far a measure lies from what is expected, in squared errors, worked by hand.</summary>
public class ExpectationTests
{
    private static readonly Expectation Between = Expectation.Between(Symptom.Subcooling, new TemperatureDifference(2), new TemperatureDifference(5), new TemperatureDifference(0.5));

    [Theory]
    [InlineData(2, 0)]
    [InlineData(3, 0)]
    [InlineData(5, 0)]
    [InlineData(1.5, 1)]
    [InlineData(5.5, 1)]
    [InlineData(1, 4)]
    [InlineData(6.5, 9)]
    [InlineData(7.5, 25)]
    [InlineData(17.5, 25)]
    [InlineData(-12, 25)]
    public void A_number_weighs_by_the_square_of_what_it_lies_outside_and_never_over_25(double value, double misfit) => Assert.Equal(misfit, Between.Misfit(new(value, 0)), 9);

    // An error of 1.5 K spread evenly has a variance of 0.75 K2; with the scatter's 0.25 that is 1.
    [Fact]
    public void The_instruments_error_widens_the_scatter() => Assert.Equal(4, Between.Misfit(new(7, 1.5)), 9);

    [Fact]
    public void What_is_not_known_speaks_neither_way()
    {
        Assert.Equal(0, Between.Misfit(Measure.Unknown));
        Assert.False(Between.HoldsBeyondError(Measure.Unknown));
    }

    [Theory]
    [InlineData(3, 1, true)]
    [InlineData(4, 1, true)]
    [InlineData(2.9, 1, false)]
    [InlineData(4.1, 1, false)]
    [InlineData(2, 0, true)]
    [InlineData(5, 0, true)]
    public void A_proof_holds_only_where_the_whole_error_lies_inside(double value, double error, bool holds) => Assert.Equal(holds, Between.HoldsBeyondError(new(value, error)));

    [Fact]
    public void At_least_and_at_most_are_open_to_the_other_side()
    {
        var least = Expectation.AtLeast(Symptom.TdShare, new Share(1), new Share(0.1));
        var most = Expectation.AtMost(Symptom.TdShare, new Share(1), new Share(0.1));

        Assert.Equal((0, 4), (least.Misfit(new(9, 0)), Math.Round(least.Misfit(new(0.8, 0)), 9)));
        Assert.Equal((0, 4), (most.Misfit(new(-9, 0)), Math.Round(most.Misfit(new(1.2, 0)), 9)));
    }

    [Theory]
    [InlineData(0, 9)]
    [InlineData(1, 0)]
    [InlineData(2, 0)]
    public void A_word_that_is_not_looked_for_weighs_what_is_set(int word, double misfit)
    {
        var glass = Expectation.Sees(Symptom.SightGlass, new Weight(9), 1, 2);

        Assert.Equal(misfit, glass.Misfit(new(word, 0)));
        Assert.Equal(misfit == 0, glass.HoldsBeyondError(new(word, 0)));
    }

    [Fact]
    public void What_is_allowed_is_not_looked_for()
    {
        Assert.True(Expectation.Allows(Symptom.SightGlass, new Weight(9), 1).IsNeutral);
        Assert.True(Between.Neutral().IsNeutral);
        Assert.False(Between.IsNeutral);
        Assert.True(Between.Proving().IsProof);
        Assert.False(Between.IsProof);
        Assert.True(Between.Hinting().IsHint);
        Assert.False(Between.IsHint);
    }
}
