using System.Collections.Immutable;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Rules;

namespace Assistant.Dialogue.Tests.Turns;

public class HandoverTests
{
    [Fact]
    public void The_next_person_is_told_the_state_in_under_twelve_lines_and_then_the_next_question()
    {
        var conversation = new Conversation(assess: _ => Conversation.Judging((FaultCode.Undercharge, Standing.Established)), known: ("refrigerant", "R404A"));
        conversation.Say("leak at the flare nut");

        var reply = conversation.Say("handover");

        var told = reply.Say.Full.Split('\n');
        Assert.InRange(told.Length + 1, 5, 11);
        Assert.Contains("Where: Upper Dairy.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Leaks found: the flare nut.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Nothing has been put right yet.", reply.Say.Full, StringComparison.Ordinal);
        Assert.NotNull(reply.Ask);
        Assert.Single(conversation.Log.OfType<HandedOver>());
    }

    [Fact]
    public void The_next_visit_opens_with_how_the_one_before_ended_and_what_leaked_twice()
    {
        var opening = Open(new EarlierLeak("Flare nut, king valve", new(2025, 3, 1)), new EarlierLeak("the flare nut king valve", new(2025, 11, 2)));

        Assert.Contains("The visit of 2025-11-02 ended with established", opening.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("It left something to do by 2025-12-01.", opening.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("It leaked twice at the same place, the flare nut king valve, the last time on 2025-11-02.", opening.Reply.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void A_leak_at_the_same_place_as_on_an_earlier_visit_is_said()
    {
        var opening = Open(new EarlierLeak("Flare nut", new DateOnly(2025, 11, 2)));
        var engine = Engine();

        var same = engine.Take(opening.After, Said("found a leak at the flare nut."));
        var other = engine.Take(opening.After, Said("found a leak at the drier"));

        Assert.Contains("same place was found on 2025-11-02", same.Reply.Say.Full, StringComparison.Ordinal);
        Assert.DoesNotContain("same place", other.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal("the drier", Assert.Single(other.Events.OfType<LeakFound>()).Place);
    }

    [Fact]
    public void A_leak_noted_by_mistake_is_taken_back()
    {
        var conversation = new Conversation();
        conversation.Say("leak at the drier");

        var reply = conversation.Say("undo");

        Assert.Empty(conversation.State.Leaks);
        Assert.Contains("no leak noted at the drier", reply.Say.Full, StringComparison.Ordinal);
    }

    private static Dialogue.Turns.TurnEngine Engine() => Conversation.Engine(FakeUnderstanding.Understand, _ => Conversation.Nothing, (_, _) => null);

    private static Dialogue.Turns.Turn Open(params ImmutableArray<EarlierLeak> leaks) => Engine().Open(
        new VisitOpened("Upper Dairy", "unit-7", "us", ImmutableDictionary<string, string>.Empty)
        {
            At = Conversation.Start,
            By = "ada",
            Unit = "invented unit",
            Before = new(new(2025, 11, 2), "undercharge", "established", ["undercharge"], [new(2025, 12, 1)], leaks),
        });

    private static InboundMessage Said(string text) => new("m-1", "chat", "c", "ada", Conversation.Start, text);
}
