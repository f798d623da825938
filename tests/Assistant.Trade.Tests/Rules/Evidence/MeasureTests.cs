using Assistant.Trade.Rules.Evidence;

namespace Assistant.Trade.Tests.Rules.Evidence;

/// <summary>A value and what it may be off by; independent errors add as squares (3 and 4 make 5).</summary>
public class MeasureTests
{
    [Fact]
    public void A_difference_carries_both_errors() => Assert.Equal(new Measure(6, 5), new Measure(10, 3) - new Measure(4, 4));

    [Fact]
    public void What_is_added_is_exact() => Assert.Equal(new Measure(12, 3), new Measure(10, 3) + 2);

    [Fact]
    public void A_share_of_it_is_off_by_the_same_share() => Assert.Equal(new Measure(5, 1.5), new Measure(10, 3) / 2);

    [Fact]
    public void One_more_doubt_widens_it() => Assert.Equal(new Measure(10, 5), new Measure(10, 3).Widen(4));

    [Fact]
    public void Nothing_follows_from_what_is_not_known()
    {
        Assert.False(Measure.Unknown.IsKnown);
        Assert.False((Measure.Unknown - new Measure(4, 4)).IsKnown);
        Assert.False((new Measure(4, 4) - Measure.Unknown).IsKnown);
        Assert.True(new Measure(0, 0).IsKnown);
    }
}
