using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Dialogue.Walks;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>What a lead asks for from afar is asked of whoever is on site, where it is read, and told to the lead.</summary>
public sealed class RequestTests
{
    private static readonly TurnEngine Engine = Conversation.Engine(FakeUnderstanding.Understand, _ => Conversation.Nothing, (_, _) => null);

    private VisitState state = new Conversation(known: [("refrigerant", "R404A"), ("application", "cooler")]).State;
    private readonly List<VisitEvent> log = [];
    private DateTimeOffset now = Conversation.Start;

    public RequestTests() => Say("Sam", "ok");

    [Fact]
    public void What_is_read_where_the_technician_stands_is_asked_next_by_the_name_of_who_asked_and_the_walk_goes_on_after_it()
    {
        var walk = Say("Sam", "repeat").AskedFact;
        Assert.Contains("I ask for it: product temperature", Say("Lee", "ask-for product_temperature").Say.Full, StringComparison.OrdinalIgnoreCase);

        var asked = Say("Sam", "repeat");
        Assert.Equal("product_temperature", asked.AskedFact);
        Assert.StartsWith("Lee asks: ", asked.Ask!.Full, StringComparison.Ordinal);
        Assert.Contains("Lee asked for it.", Say("Sam", "why").Say.Full, StringComparison.Ordinal);

        Assert.Equal(walk, Say("Sam", "40 degF").AskedFact);
        Assert.Equal(40, ((Reading)state.Facts.Find(FactCatalogue.ProductTemperature)!).Value);
    }

    [Fact]
    public void Who_is_alone_on_the_visit_is_asked_plainly_for_what_they_asked_for_themselves()
    {
        var asked = Say("Sam", "ask-for product_temperature");

        Assert.Equal("product_temperature", asked.AskedFact);
        Assert.DoesNotContain("Sam asks", asked.Ask!.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_asked_is_told_once_whatever_they_say_next_and_nobody_else_is()
    {
        Say("Lee", "ask-for product_temperature");
        Say("Sam", "40 degF");

        Assert.DoesNotContain("You asked", Say("Kim", "repeat").Say.Full, StringComparison.Ordinal);
        Assert.Contains("You asked: product temperature 40 °F, by Sam.", Say("Lee", "repeat").Say.Full, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("You asked", Say("Lee", "repeat").Say.Full, StringComparison.Ordinal);
        Assert.Single(log.OfType<RequestTold>());
    }

    [Fact]
    public void What_is_read_elsewhere_waits_for_the_first_question_there()
    {
        Assert.Contains("at the unit: oil level", Say("Lee", "ask-for oil_level").Say.Full, StringComparison.OrdinalIgnoreCase);
        Assert.NotEqual("oil_level", Say("Sam", "repeat").AskedFact);

        var asked = new List<string?>();
        while (!asked.Contains("oil_level") && asked.Count < 40)
        {
            var reply = state.Stop is { } stop && Conversation.Walk.Find(stop)!.Kind == StopKind.Confirms ? Say("Sam", "ok") : Say("Sam", "skip");
            Assert.Equal(reply.AskedFact == "oil_level", reply.Walk!.Place == "unit" && reply.AskedFact is not null);
            asked.Add(reply.AskedFact);
        }

        Assert.Contains("oil_level", asked);
    }

    [Fact]
    public void A_reading_asked_for_again_is_told_as_it_was_and_asked_anew()
    {
        Say("Sam", "product_temperature=40 degF");

        var reply = Say("Lee", "ask-for product_temperature");

        Assert.Contains("was 40 °F, by Sam", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal("product_temperature", Say("Sam", "repeat").AskedFact);
        now += TimeSpan.FromMinutes(5);
        Say("Sam", "41 degF");
        Assert.Contains("41 °F, by Sam", Say("Lee", "repeat").Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_of_before_the_wish_does_not_answer_it()
    {
        var seen = state;
        Say("Lee", "ask-for product_temperature");

        var late = Engine.Take(state, seen, new("late", "chat", "c", "Sam", now.AddMinutes(-1), "product_temperature=40 degF"));

        Assert.True(Assert.Single(late.After.Requests.All).IsOpen);
        Assert.Equal("product_temperature", late.Reply.AskedFact);
    }

    [Fact]
    public void Never_mind_takes_it_back_and_what_nobody_asked_for_is_said_so()
    {
        Say("Lee", "ask-for product_temperature");

        Assert.Contains("No longer asked for", Say("Lee", "never-mind product_temperature").Say.Full, StringComparison.Ordinal);
        Assert.NotEqual("product_temperature", Say("Sam", "repeat").AskedFact);
        Assert.Contains("Nobody asked for it", Say("Lee", "never-mind product_temperature").Say.Full, StringComparison.Ordinal);
        Assert.DoesNotContain("You asked", Say("Lee", "repeat").Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_not_be_had_is_skipped_and_the_one_who_asked_is_told()
    {
        Say("Lee", "ask-for product_temperature");

        Assert.Contains("I tell Lee", Say("Sam", "skip").Say.Full, StringComparison.Ordinal);
        Assert.Empty(state.Skipped);
        Assert.Contains("Sam could not get it", Say("Lee", "repeat").Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_taken_back_leaves_the_wish_open_and_an_undone_wish_is_none()
    {
        Say("Lee", "ask-for product_temperature");
        Say("Sam", "40 degF");
        Assert.Equal("product_temperature", Say("Sam", "undo").AskedFact);

        Assert.NotEqual("product_temperature", Say("Lee", "undo").AskedFact);
        Assert.Empty(state.Requests.All);
    }

    [Fact]
    public void Two_wishes_are_asked_in_the_order_they_came_and_the_same_one_twice_is_asked_once()
    {
        Say("Lee", "ask-for product_temperature");
        Say("Kim", "ask-for evaporator_air_in");
        Assert.Contains("asked for already", Say("Lee", "ask-for product_temperature").Say.Full, StringComparison.Ordinal);

        Assert.Equal("evaporator_air_in", Say("Sam", "40 degF").AskedFact);
        Assert.Equal(2, log.OfType<ReadingRequested>().Count());
    }

    [Fact]
    public void What_names_no_reading_is_said_in_one_line() =>
        Assert.Contains("I know no reading called \"flux\"", Say("Lee", "ask-for flux").Say.Full, StringComparison.Ordinal);

    [Fact]
    public void A_step_that_waits_for_a_word_says_it_after_its_own_question_and_ok_still_confirms_the_step()
    {
        state = new Conversation().State;
        Assert.Equal("hazards", state.Stop);

        var reply = Say("Lee", "ask-for product_temperature");
        Assert.Null(reply.AskedFact);
        Assert.Contains("Lee asks: ", reply.Ask!.Full, StringComparison.Ordinal);
        Assert.Equal(["ok"], reply.Choices.ToArray());
        Say("Sam", "ok");
        Assert.NotEqual("hazards", state.Stop);
    }

    private Reply Say(string by, string text)
    {
        now += TimeSpan.FromMinutes(1);
        var turn = Engine.Take(state, new($"m-{state.Version}", "chat", "c", by, now, text));
        state = turn.After;
        log.AddRange(turn.Events);
        return turn.Reply;
    }
}
