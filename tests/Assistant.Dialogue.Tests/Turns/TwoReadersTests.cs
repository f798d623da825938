using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;
using Assistant.Trade.Facts;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>Two people who read one thing within moments: both readings are kept, and which counts is never decided silently.</summary>
public sealed class TwoReadersTests
{
    private static readonly TurnEngine Engine = Conversation.Engine(FakeUnderstanding.Understand, _ => Conversation.Nothing, (_, _) => null);

    private VisitState state = new Conversation().State;
    private readonly List<VisitEvent> log = [];
    private DateTimeOffset now = Conversation.Start;

    [Fact]
    public void What_differs_by_more_than_the_gauges_may_is_asked_in_one_line_and_neither_counts_meanwhile()
    {
        Say("Sam", "suction_pressure=22 psig");

        var reply = Say("Lee", "suction_pressure=35 psig");

        Assert.Equal("suction pressure: Sam says 22 psig, Lee says 35 psig. Which one counts?", reply.Ask!.Full, ignoreCase: true);
        Assert.Equal(["Sam 22 psig", "Lee 35 psig"], reply.Choices.ToArray());
        Assert.Equal("suction_pressure", reply.AskedFact);
        Assert.False(state.Facts.Has(FactCatalogue.SuctionPressure));
        Assert.Equal([22.0, 35.0], Values());
    }

    [Theory]
    [InlineData("Kim", "Sam", 22)]
    [InlineData("Kim", "sams", 22)]
    [InlineData("Kim", "lee is right", 35)]
    [InlineData("Kim", "Lee 35 psig", 35)]
    [InlineData("Lee", "mine", 35)]
    [InlineData("Sam", "35 psig", 35)]
    [InlineData("Kim", "the first one", 22)]
    public void The_answer_is_a_name_mine_a_choice_or_the_value_and_takes_the_other_out_by_a_correction(string by, string answer, double counts)
    {
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");

        var reply = Say(by, answer);

        Assert.Equal(counts, ((Reading)state.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
        var loser = log.OfType<FactTaken>().Single(e => e.Value != counts);
        Assert.Equal(loser.Number, Assert.Single(log.OfType<EventWithdrawn>()).Withdrawn);
        Assert.Contains($"{counts} psig by {(counts == 22 ? "Sam" : "Lee")} counts", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal(2, log.OfType<FactTaken>().Count());
    }

    [Theory]
    [InlineData("sam")]
    [InlineData("lee")]
    public void Undo_right_after_it_was_settled_brings_the_difference_back_and_not_the_reading_that_counted_down(string counts)
    {
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");
        Say("Lee", counts);

        var reply = Say("Lee", "undo");

        Assert.Equal("suction pressure: Sam says 22 psig, Lee says 35 psig. Which one counts?", reply.Ask!.Full, ignoreCase: true);
        Assert.DoesNotContain("Taken back", reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal(["Sam", "Lee"], state.History[FactCatalogue.SuctionPressure].Select(t => t.By));

        Say("Lee", "mine");
        Assert.Equal(35, ((Reading)state.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
    }

    [Fact]
    public void A_yes_a_skip_or_another_reading_settles_nothing_and_a_further_reading_of_it_does_by_asking_anew_or_by_counting()
    {
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");

        Assert.Contains("One of the two", Say("Sam", "ok").Say.Full, StringComparison.Ordinal);
        Assert.Contains("can not be left out", Say("Sam", "skip").Say.Full, StringComparison.Ordinal);
        Assert.Contains("Two of you read it", Say("Sam", "why").Say.Full, StringComparison.Ordinal);
        Assert.Equal("suction_pressure", Say("Sam", "discharge_pressure=200 psig").AskedFact);

        now += TimeSpan.FromMinutes(3);
        Say("Kim", "suction_pressure=30 psig");
        Assert.Empty(state.Disputes);
        Assert.Equal(30, ((Reading)state.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
    }

    [Fact]
    public void What_agrees_within_the_gauges_error_is_said_shortly_and_the_later_counts()
    {
        Say("Sam", "suction_pressure=22 psig");

        var reply = Say("Lee", "suction_pressure=22.8 psig");

        Assert.Equal("22.8 psig, as Sam: 22 psig.", reply.Say.Brief);
        Assert.Empty(state.Disputes);
        Assert.Equal(22.8, ((Reading)state.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
    }

    [Theory]
    [InlineData("Sam", 1)]
    [InlineData("Lee", 3)]
    public void One_s_own_later_reading_and_another_s_after_more_than_two_minutes_correct_it_as_ever(string by, int minutes)
    {
        Say("Sam", "suction_pressure=22 psig");
        now += TimeSpan.FromMinutes(minutes - 1);

        var reply = Say(by, "suction_pressure=35 psig");

        Assert.Empty(state.Disputes);
        Assert.Contains("it was 22 psig", reply.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_words_for_one_thing_differ_too()
    {
        Say("Sam", "sight_glass=clear");

        Assert.Contains("Sam says clear, Lee says flashing", Say("Lee", "sight_glass=flashing").Ask!.Full, StringComparison.Ordinal);
    }

    [Fact]
    public void By_the_times_they_were_taken_it_is_the_same_whichever_came_in_first()
    {
        var seen = state;
        var (sam, lee) = (Message("a", "Sam", "suction_pressure=22 psig", 10), Message("b", "Lee", "suction_pressure=35 psig", 40));
        var inOrder = Engine.Take(Engine.Take(seen, sam).After, seen, lee);
        var behind = Engine.Take(Engine.Take(seen, lee).After, seen, sam);

        Assert.Equal(inOrder.Reply.Ask, behind.Reply.Ask);
        Assert.Equal(Pair(inOrder.After), Pair(behind.After));
        Assert.Equal(("Sam", "Lee"), Pair(behind.After));
    }

    [Fact]
    public void A_reading_from_before_both_comes_in_while_they_differ_and_the_two_are_asked_about_as_before()
    {
        var seen = state;
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");

        var late = Engine.Take(state, seen, Message("late", "Kim", "suction_pressure=28 psig", 1));

        Assert.Equal(("Sam", "Lee"), Pair(late.After));
        Assert.Equal(3, late.After.History[FactCatalogue.SuctionPressure].Count);
    }

    [Fact]
    public void Two_who_settle_it_from_behind_each_for_their_own_do_not_take_both_out()
    {
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");
        var seen = state;
        var first = Engine.Take(seen, seen, Message("a", "Sam", "mine", 300));

        var second = Engine.Take(first.After, seen, Message("b", "Lee", "mine", 301));

        Assert.Contains("noted already", second.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal(22, ((Reading)second.After.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
    }

    [Fact]
    public void Taken_back_the_second_reading_leaves_the_first_to_count()
    {
        Say("Sam", "suction_pressure=22 psig");
        Say("Lee", "suction_pressure=35 psig");

        Say("Lee", "undo");

        Assert.Empty(state.Disputes);
        Assert.Equal(22, ((Reading)state.Facts.Find(FactCatalogue.SuctionPressure)!).Value);
    }

    private static (string, string) Pair(VisitState state) => (state.Disputes[FactCatalogue.SuctionPressure].One.By, state.Disputes[FactCatalogue.SuctionPressure].Other.By);

    private IEnumerable<double> Values() => state.History[FactCatalogue.SuctionPressure].Select(e => ((Reading)e.Value!).Value);

    private static InboundMessage Message(string id, string by, string text, int seconds) => new(id, "chat", "c", by, Conversation.Start.AddSeconds(seconds), text);

    private Reply Say(string by, string text)
    {
        now += TimeSpan.FromMinutes(1);
        var turn = Engine.Take(state, new($"m-{state.Version}", "chat", "c", by, now, text));
        (state, _) = (turn.After, turn.Events);
        log.AddRange(turn.Events);
        return turn.Reply;
    }
}
