using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Visits;

public sealed class StandingCautionsTests
{
    private static readonly DateTimeOffset At = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void What_was_told_to_another_where_the_visit_stands_was_not_heard_by_this_one()
    {
        VisitEvent[] events =
        [
            new StopReached("warm-box", "suction", "unit") { At = At, By = "ada" }, Given("ladder", "ben"),
            new StopReached("warm-box", "act", "unit") { At = At, By = "ben" }, Given("lock-out", "ben"), Given("hot-surface", "ben"), Given("lock-out", "ben"), Given("hot-surface", "ada"),
        ];

        Assert.Equal("lock-out", Assert.Single(StandingCautions.NotGivenTo("ada", events)));
        Assert.Empty(StandingCautions.NotGivenTo("ben", events));
        Assert.Empty(StandingCautions.NotGivenTo("ada", []));
    }

    private static CautionGiven Given(string caution, string by) => new(caution, "unit") { At = At, By = by };
}
