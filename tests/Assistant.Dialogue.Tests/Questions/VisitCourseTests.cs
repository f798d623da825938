using Assistant.Dialogue.Questions;
using Assistant.Dialogue.Understanding;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Questions;

public sealed class VisitCourseTests
{
    private static readonly DateTimeOffset Start = new(2026, 1, 20, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_vacuum_course_runs_by_the_clock_from_the_last_pumping()
    {
        var course = Of(Took(0, "vacuum", 2000, "micron"), Took(30, "vacuum", 400, "micron"), Took(35, "vacuum", 520, "micron"), Took(46, "vacuum", 560, "micron"));
        Assert.Equal([0, 5, 16], course.Vacuum.Select(v => Math.Round(v.Elapsed.Minutes)));
        Assert.Equal([400, 520, 560], course.Vacuum.Select(v => Math.Round(v.Pressure.Pascals / 0.133322368)));
    }

    [Fact]
    public void A_time_that_is_said_goes_before_the_clock()
    {
        var course = Of(Took(0, "vacuum", 400, "micron"), Took(1, "vacuum", 450, "micron"), Took(1, "elapsed_time", 10, "min"));
        Assert.Equal([0, 10], course.Vacuum.Select(v => Math.Round(v.Elapsed.Minutes)));
    }

    [Fact]
    public void A_gauge_that_plays_a_little_does_not_begin_anew() =>
        Assert.Equal(3, Of(Took(0, "vacuum", 400, "micron"), Took(5, "vacuum", 410, "micron"), Took(10, "vacuum", 405, "micron")).Vacuum.Length);

    [Fact]
    public void A_hold_begins_with_its_first_pressure_and_the_temperature_said_with_it()
    {
        var course = Of(
            Took(0, "test_pressure", 150, "psig"), Took(0, "test_gas_temperature", 70, "degF"),
            Took(600, "test_pressure", 141, "psig"), Took(600, "test_gas_temperature", 40, "degF"));
        Assert.Equal(150, course.TestPressureSet?.Value);
        Assert.Equal(70, course.TestGasSet?.Value);
    }

    [Fact]
    public void A_temperature_asked_for_between_the_two_readings_is_that_of_the_first()
    {
        var course = Of(
            Took(0, "test_pressure", 150, "psig"), Took(2, "test_gas_temperature", 70, "degF"),
            Took(600, "test_pressure", 141, "psig"), Took(602, "test_gas_temperature", 40, "degF"));
        Assert.Equal(70, course.TestGasSet?.Value);
    }

    [Fact]
    public void Filled_again_a_new_hold_begins()
    {
        var course = Of(Took(0, "test_pressure", 50, "psig"), Took(5, "test_pressure", 49, "psig"), Took(10, "test_pressure", 150, "psig"), Took(60, "test_pressure", 150, "psig"));
        Assert.Equal(150, course.TestPressureSet?.Value);
    }

    [Fact]
    public void A_pressure_read_once_has_not_been_held() => Assert.Null(Of(Took(0, "test_pressure", 150, "psig")).TestPressureSet);

    [Fact]
    public void The_box_is_followed_from_the_visit_s_opening() =>
        Assert.Equal([10, 40, 70], Of(Took(10, "box_temperature", 12, "degC"), Took(40, "box_temperature", 9, "degC"), Took(70, "box_temperature", 7, "degC")).Box.Select(b => Math.Round(b.At.Minutes)));

    [Fact]
    public void A_question_on_a_visit_is_answered_from_its_course()
    {
        var state = State(Took(0, "vacuum", 400, "micron"), Took(5, "vacuum", 410, "micron"), Took(16, "vacuum", 418, "micron"));
        var answer = new QuestionAnswerer(Call.Phrases).Answer(new(Intent.Question, null, "vacuum-verdict", [], [], null, QuestionArguments.None), state);
        Assert.Equal("418 micron and level: dry and tight.", answer?.Say.Full);
    }

    private static VisitCourse Of(params VisitEvent[] events) => VisitCourse.Of(State(events));

    private static VisitState State(params VisitEvent[] events) =>
        VisitState.Fold([new VisitOpened("Mill Street", null, "us", System.Collections.Immutable.ImmutableDictionary<string, string>.Empty) { At = Start, By = "lee" }, .. events]);

    private static FactTaken Took(double minutes, string fact, double value, string unit) =>
        new(fact, value, unit, null, "unit", null) { At = Start.AddMinutes(minutes), By = "lee" };
}
