using Assistant.Trade.Sums;
using UnitsNet;

namespace Assistant.Trade.Tests.Sums;

/// <summary>Both methods of 40 CFR 82.152, by hand.</summary>
public sealed class AnnualLeakRateTests
{
    private static readonly Mass FullCharge = Mass.FromPounds(500);
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData(25, 73, 25)]
    [InlineData(25, 365, 5)]
    [InlineData(25, 700, 5)]
    [InlineData(10, 1, 730)]
    public void Annualising_counts_the_days_since_the_last_addition_but_no_more_than_a_year(double pounds, int days, double percent) =>
        Assert.Equal(percent, AnnualLeakRate.Annualising(Mass.FromPounds(pounds), FullCharge, days).Percent, 1e-9);

    [Fact]
    public void Rolling_adds_up_the_last_365_days() =>
        Assert.Equal(14, AnnualLeakRate.Rolling([Added(2025, 11, 25, 100), Added(2025, 11, 26, 30), Added(2026, 11, 25, 40), Added(2026, 11, 26, 100)], FullCharge, Today, null).Percent, 1e-9);

    [Fact]
    public void Rolling_begins_anew_after_a_proven_repair() =>
        Assert.Equal(8, AnnualLeakRate.Rolling([Added(2026, 3, 1, 30), Added(2026, 6, 1, 100), Added(2026, 11, 1, 40)], FullCharge, Today, new(2026, 6, 1)).Percent, 1e-9);

    [Fact]
    public void A_repair_longer_than_a_year_ago_changes_nothing() =>
        Assert.Equal(6, AnnualLeakRate.Rolling([Added(2025, 1, 1, 100), Added(2026, 3, 1, 30)], FullCharge, Today, new(2024, 1, 1)).Percent, 1e-9);

    [Fact]
    public void A_charge_of_nothing_or_no_day_is_misuse()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => AnnualLeakRate.Annualising(Mass.FromPounds(1), Mass.Zero, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => AnnualLeakRate.Annualising(Mass.FromPounds(1), FullCharge, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AnnualLeakRate.Rolling([], Mass.Zero, Today, null));
    }

    private static RefrigerantAddition Added(int year, int month, int day, double pounds) => new(new(year, month, day), Mass.FromPounds(pounds));
}
