using System.Collections.Immutable;
using Assistant.Trade.Regulations;
using UnitsNet;
using static Assistant.Trade.Tests.Regulations.RegulationScene;

namespace Assistant.Trade.Tests.Regulations;

/// <summary>40 CFR 82.152, seasonal variance: removed for one season, put back within twelve months, no more than was removed.</summary>
public class SeasonalMovesTests
{
    [Theory]
    [InlineData("2026-10-20", 40, true)]
    [InlineData("2027-04-20", 40, true)]
    [InlineData("2027-04-21", 40, false)]
    [InlineData("2026-10-20", 39.99, true)]
    [InlineData("2026-10-20", 40.01, false)]
    public void No_more_than_was_removed_and_within_twelve_months(string day, double pounds, bool proven) =>
        Assert.Equal(proven, Moves(Removed("2026-04-20", 40), Added(day, pounds, AdditionReason.Seasonal)).Single().IsProven);

    [Fact]
    public void A_first_winter_top_up_with_no_recorded_removal_is_a_leak()
    {
        var move = Moves(Added("2026-11-01", 10, AdditionReason.Seasonal)).Single();
        Assert.False(move.IsProven);
        Assert.Equal(Mass.Zero, move.Held);
    }

    [Fact]
    public void What_was_removed_for_another_reason_proves_nothing() =>
        Assert.False(Moves(Removed("2026-04-20", 40, forTheSeason: false), Added("2026-10-20", 10, AdditionReason.Seasonal)).Single().IsProven);

    [Fact]
    public void What_came_out_and_went_back_on_one_day_is_no_change_of_season() =>
        Assert.False(Moves(Removed("2026-04-20", 40), Added("2026-04-20", 40, AdditionReason.Seasonal)).Single().IsProven);

    [Fact]
    public void What_is_put_back_can_be_put_back_only_once()
    {
        var moves = Moves(Removed("2026-04-20", 40), Added("2026-10-20", 30, AdditionReason.Seasonal), Added("2026-11-20", 10.01, AdditionReason.Seasonal));
        Assert.Equal([true, false], moves.Select(m => m.IsProven));
        Assert.Equal(10, moves[1].Held.Pounds, 9);
    }

    [Fact]
    public void The_oldest_removal_is_put_back_first()
    {
        var moves = Moves(
            Removed("2026-04-01", 20), Removed("2026-06-01", 20),
            Added("2026-10-01", 25, AdditionReason.Seasonal),
            Added("2027-05-01", 15, AdditionReason.Seasonal));
        Assert.All(moves, m => Assert.True(m.IsProven));
    }

    [Fact]
    public void A_top_up_is_never_taken_for_a_seasonal_move() =>
        Assert.Empty(Moves(Removed("2026-04-20", 40), Added("2026-10-20", 40)));

    private static ImmutableArray<SeasonalMove> Moves(params ServiceEvent[] events) => SeasonalMoves.Of(events, withinMonths: 12);
}
