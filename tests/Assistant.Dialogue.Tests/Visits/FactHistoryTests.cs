using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;
using CsCheck;

namespace Assistant.Dialogue.Tests.Visits;

/// <summary>What a fact's history says does not depend on the order in which its readings come in.</summary>
public class FactHistoryTests
{
    private static readonly DateTimeOffset Morning = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_reading_that_comes_in_late_stands_at_its_time_and_the_latest_counts()
    {
        var state = Fold(Read(45, 10), Read(47, 5));

        Assert.Equal([47.0, 45.0], Values(state));
        Assert.Equal(45, ((Reading)state.Facts.Find(FactCatalogue.BoxTemperature)!).Value);
    }

    [Fact]
    public void A_reading_from_before_a_repair_that_comes_in_after_it_is_out_of_date()
    {
        var state = Fold(new FaultMended("excess-load", ["box_temperature"]) { At = Morning.AddMinutes(8), By = "ada" }, Read(47, 5));

        Assert.False(state.Facts.Has(FactCatalogue.BoxTemperature));
    }

    [Fact]
    public void The_record_is_older_than_anything_read_on_the_visit()
    {
        var state = Fold(Read(38, 0, "record"), Read(47, -5));

        Assert.Equal(47, ((Reading)state.Facts.Find(FactCatalogue.BoxTemperature)!).Value);
    }

    [Fact]
    public void In_whatever_order_readings_and_repairs_come_in_the_history_is_the_same()
    {
        var events = Gen.Select(Gen.Int[30, 60], Gen.Bool).Array[1, 8].Select(many => many.Select((e, i) => e.Item2
            ? (VisitEvent)Read(e.Item1, i)
            : new FaultMended("excess-load", ["box_temperature"]) { At = Morning.AddMinutes(i), By = "ada" }).ToArray());
        events.SelectMany(inOrder => Gen.Shuffle(inOrder).Select(shuffled => (inOrder, shuffled))).Sample(pair =>
        {
            var (expected, state) = (Fold(pair.inOrder), Fold(pair.shuffled));
            Assert.Equal(Values(expected), Values(state));
            Assert.Equal(expected.Facts.Find(FactCatalogue.BoxTemperature), state.Facts.Find(FactCatalogue.BoxTemperature));
        });
    }

    private static VisitState Fold(params VisitEvent[] events) => VisitState.Fold(events);

    private static IEnumerable<double?> Values(VisitState state) => state.History[FactCatalogue.BoxTemperature].Select(e => (e.Value as Reading)?.Value);

    private static FactTaken Read(double value, int minute, string place = "room") =>
        new("box_temperature", value, "degF", null, place, null) { At = Morning.AddMinutes(minute), By = "ada" };
}
