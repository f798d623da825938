using System.Collections.Immutable;
using Assistant.Dialogue.Tests.Understanding;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Turns;

public sealed class OpeningTests
{
    [Fact]
    public void A_visit_to_known_equipment_opens_with_its_record_and_what_changed()
    {
        var opened = new VisitOpened("Upper Dairy", "unit-7", "us", ImmutableDictionary<string, string>.Empty.Add("refrigerant", "R448A").Add("full_charge", "12 lb"))
        {
            At = Conversation.Start,
            By = "ada",
            Details = ImmutableSortedDictionary<string, string>.Empty.Add("valve_body", "invented 2").Add("valve_orifice", "3"),
            Changed = [new("setpoint", "36 degF", "38 degF"), new("valve_orifice", "2", "3")],
        };

        var said = Engine.Open(opened).Reply.Say;

        Assert.Contains("On record (4 details): full charge 12 lb, valve body invented 2, valve orifice 3.", said.Full, StringComparison.Ordinal);
        Assert.Contains("Changed since: setpoint 38 °F, before 36 °F; valve orifice 3, before 2.", said.Full, StringComparison.Ordinal);
        Assert.Contains("4 details on record.", said.Brief, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cylinder_that_is_lighter_than_its_last_use_left_it_is_said_and_its_tare_is_not_asked_again()
    {
        var opened = new VisitOpened("Upper Dairy", null, "us", ImmutableDictionary<string, string>.Empty)
        {
            At = Conversation.Start,
            By = "ada",
            Cylinders = [new("14", "supply", "R448A", 12_247, 21_943, null)],
        };
        var turn = Engine.Take(Engine.Open(opened).After, new("1", "chat", "c", "ada", Conversation.Start, "cylinder 14 weighs 48 lb"));

        Assert.Contains("48 lb on the scale, 21 lb in it.", turn.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Cylinder 14 weighed 48 lb 6 oz after its last use: 6 oz went missing since.", turn.Reply.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tare_other_than_the_cylinders_is_refused()
    {
        var opened = new VisitOpened("Upper Dairy", null, "us", ImmutableDictionary<string, string>.Empty)
        {
            At = Conversation.Start,
            By = "ada",
            Cylinders = [new("14", "supply", "R448A", 12_247, 21_943, null)],
        };
        var turn = Engine.Take(Engine.Open(opened).After, new("1", "chat", "c", "ada", Conversation.Start, "charged 2 lb from cylinder 14, tare 26 lb"));

        Assert.Contains("its tare is 27 lb, not 26 lb", turn.Reply.Say.Full, StringComparison.Ordinal);
        Assert.DoesNotContain(turn.Events, e => e is CylinderUsed);
    }

    private static TurnEngine Engine { get; } = Conversation.Engine(LexiconFiles.Understander.Understand, Trade.Rules.Assessor.Assess, (_, _) => null);
}
