using Assistant.Dialogue.Visits;
using Assistant.Records.Readings;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Readings;

public class VisitReadingsTests
{
    [Fact]
    public void The_newest_reading_of_a_fact_counts_and_the_older_ones_stay_visible()
    {
        var readings = VisitReadings.Of([Taken(1, 117), Taken(2, 124)]);

        Assert.Equal([ReadingStanding.Superseded, ReadingStanding.Counts], readings.Select(r => r.Standing));
    }

    [Fact]
    public void A_reading_that_was_taken_back_names_the_event_that_did_and_the_older_one_counts_again()
    {
        var readings = VisitReadings.Of([Taken(1, 117), Taken(2, 171), new EventWithdrawn(2) { At = Invented.Morning, By = "Robin", Number = 3 }]);

        Assert.Equal([ReadingStanding.Counts, ReadingStanding.Withdrawn], readings.Select(r => r.Standing));
        Assert.Equal(3, readings[1].WithdrawnBy);
    }

    [Fact]
    public void A_value_that_did_not_fit_is_shown_as_such_until_it_is_confirmed()
    {
        var doubted = new FactQuestioned("discharge_pressure", 1170, "psig", null, "over any gauge") { At = Invented.Morning, By = "Robin", Number = 1 };

        Assert.Equal((ReadingStanding.Questioned, "over any gauge"), (VisitReadings.Of([doubted])[0].Standing, VisitReadings.Of([doubted])[0].Doubt));
        var confirmed = Assert.Single(VisitReadings.Of([doubted, Taken(2, 1170)]));
        Assert.Equal((2, ReadingStanding.Counts), (confirmed.Number, confirmed.Standing));
    }

    [Fact]
    public void Of_two_that_differ_neither_counts_until_one_is_taken_out()
    {
        VisitEvent[] differing = [Taken(1, 117), Taken(2, 140) with { By = "Kim" }, new ReadingsDiffer("discharge_pressure", 1, 2) { At = Invented.Morning, By = "Kim", Number = 3 }];

        Assert.Equal([ReadingStanding.Disputed, ReadingStanding.Disputed], VisitReadings.Of(differing).Select(r => r.Standing));
        var settled = VisitReadings.Of([.. differing, new EventWithdrawn(2) { At = Invented.Morning, By = "Robin", Number = 4 }]);
        Assert.Equal([ReadingStanding.Counts, ReadingStanding.Withdrawn], settled.Select(r => r.Standing));
    }

    private static FactTaken Taken(int number, double value) =>
        new("discharge_pressure", value, "psig", null, "unit", null) { At = Invented.Morning, By = "Robin", Number = number };
}
