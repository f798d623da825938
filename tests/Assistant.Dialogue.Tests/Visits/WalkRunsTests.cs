using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Visits;

public sealed class WalkRunsTests
{
    private static readonly DateTimeOffset At = new(2026, 7, 14, 9, 0, 0, TimeSpan.FromHours(2));

    [Fact]
    public void The_walk_left_is_under_way_again_when_the_other_is_finished()
    {
        var state = VisitState.Fold([Started("warm-box"), Reached("warm-box", "display"), Started("vacuum"), Reached("vacuum", "pump")]);
        Assert.Equal(("vacuum", "pump", "warm-box"), (state.Walk, state.Stop, Assert.Single(state.Runs.Left).Walk));

        var back = state.Apply(Finished("vacuum"));
        Assert.Equal(("warm-box", "display"), (back.Walk, back.Stop));
        Assert.Empty(back.Runs.Left);
    }

    [Fact]
    public void A_second_passage_knows_nothing_of_what_was_confirmed_in_the_first()
    {
        var first = VisitState.Fold([Started("warm-box"), Started("vacuum"), Confirmed("vacuum", "ready"), Finished("vacuum")]);

        var second = first.Apply(Started("vacuum"));

        Assert.False(second.Run!.IsConfirmed("ready"));
        Assert.True(second.Runs.All[1].IsConfirmed("ready"));
    }

    [Fact]
    public void An_unfinished_walk_is_taken_up_where_it_was_left()
    {
        var state = VisitState.Fold([Started("warm-box"), Started("vacuum"), Confirmed("vacuum", "ready"), Resumed("warm-box"), Resumed("vacuum")]);

        Assert.True(state.Run!.IsConfirmed("ready"));
        Assert.Equal(2, state.Runs.All.Length);
    }

    [Fact]
    public void A_stop_passed_anew_is_open_again_until_that_is_taken_back()
    {
        var confirmed = VisitState.Fold([Started("vacuum"), Confirmed("vacuum", "ready")]);

        var reopened = confirmed.Apply(new StopsReopened("vacuum", ["ready"]) { At = At, By = "ada" });

        Assert.False(reopened.Run!.IsConfirmed("ready"));
        Assert.True(reopened.Apply(new EventWithdrawn(3) { At = At, By = "ada" }).Run!.IsConfirmed("ready"));
    }

    [Fact]
    public void Events_of_a_time_with_one_walk_belong_to_its_one_run()
    {
        var state = VisitState.Fold([Started("warm-box"), Confirmed("warm-box", "hazards"), new StopSkipped("warm-box", "door") { At = At, By = "ada" }, Finished("warm-box")]);

        var run = Assert.Single(state.Runs.All);
        Assert.Equal((true, true, 4), (run.IsConfirmed("hazards"), run.IsSkipped("door"), run.FinishedBy));
        Assert.True(state.IsFinished);
    }

    private static WalkStarted Started(string walk) => new(walk) { At = At, By = "ada" };

    private static WalkResumed Resumed(string walk) => new(walk) { At = At, By = "ada" };

    private static WalkFinished Finished(string walk) => new(walk) { At = At, By = "ada" };

    private static StopConfirmed Confirmed(string walk, string stop) => new(walk, stop) { At = At, By = "ada" };

    private static StopReached Reached(string walk, string stop) => new(walk, stop, "unit") { At = At, By = "ada" };
}
