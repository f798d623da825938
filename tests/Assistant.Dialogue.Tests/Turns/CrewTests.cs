using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>Who is on a visit, who watches, who leaves, and who comes in whose place.</summary>
public sealed class CrewTests
{
    private static readonly TurnEngine Engine = Conversation.Engine(FakeUnderstanding.Understand, _ => Conversation.Nothing, (_, _) => null);

    private VisitState state = new Conversation().State;
    private DateTimeOffset now = Conversation.Start;

    [Fact]
    public void Who_is_on_the_visit_is_told_with_role_channel_and_how_long_ago_they_were_heard()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");
        Join("Kim", "office");
        Say("Sam", "ok", "sms");
        now += TimeSpan.FromMinutes(7);

        Assert.Equal(
            "On the visit: Sam (on site, by text, 8 min ago); Lee (helping, in the room, just now); Kim (office, not heard yet).",
            Say("Lee", "who", "xmpp").Say.Full);
    }

    [Fact]
    public void Where_nobody_signs_in_whoever_spoke_is_on_the_visit_and_on_site()
    {
        Say("Sam", "ok", "page");

        Assert.Equal("Here: Lee on site; Sam on site.", Say("Lee", "who", "page").Say.Brief);
    }

    [Fact]
    public void The_visit_is_handed_to_one_who_is_on_it_and_from_then_on_they_confirm_what_is_safe_and_the_other_does_not()
    {
        Join("Sam", "on-site");
        Join("Lee Park", "helping");

        var reply = Say("Sam", "handover to lee please");

        Assert.Contains("Handed over to Lee Park.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Lee Park is on site from now on and confirms what is safe; Sam helps.", reply.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Only somebody on site", Say("Sam", "ok").Say.Full, StringComparison.Ordinal);
        Assert.Equal("hazards", state.Stop);
        Say("Lee Park", "ok");
        Assert.NotEqual("hazards", state.Stop);
    }

    [Fact]
    public void A_lead_moves_the_place_on_site_from_one_to_another_and_keeps_their_own()
    {
        Join("Sam", "on-site");
        Join("Lee", "office");
        Join("Kim", "helping");

        Say("Lee", "handover to Kim");

        Assert.Equal([("Kim", "on-site"), ("Lee", "office"), ("Sam", "helping")], VisitCrew.Of(state).Select(m => (m.Name, m.Role)).OrderBy(m => m.Name, StringComparer.Ordinal));
    }

    [Fact]
    public void A_name_that_is_not_on_the_visit_gets_one_line_with_who_is_and_nothing_is_handed_over()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");

        Assert.Equal("No Robin here. On it: Sam on site; Lee helping.", Say("Sam", "handover to Robin").Say.Brief);
        Assert.Null(state.HandedTo);
    }

    [Fact]
    public void One_who_is_alone_hands_over_to_somebody_who_is_not_there_yet()
    {
        Join("Sam", "on-site");
        Say("Sam", "handover to Lee");
        Join("Lee", "helping");

        Assert.Equal("Lee", state.HandedTo);
        Assert.Equal(VisitCrew.OnSite, VisitCrew.RoleOf(state, "Lee"));
    }

    [Fact]
    public void What_one_was_to_be_reminded_of_goes_to_who_comes_in_their_place_over_two_handovers_and_back()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");
        Join("Kim", "helping");
        Say("Sam", "handover to Lee");
        Say("Lee", "handover to Kim");
        Assert.Equal("Kim", state.Crew.Successor("Sam"));

        Say("Kim", "handover to Sam");

        Assert.Equal("Sam", state.Crew.Successor("Sam"));
        Assert.Equal("Sam", state.Crew.Successor("Lee"));
    }

    [Fact]
    public void A_check_on_one_who_works_alone_goes_over_with_the_visit_and_a_helper_s_word_does_not_settle_it()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");
        Apply(new CheckInExpected(TimeSpan.FromMinutes(20), now, now.AddMinutes(5), "Kim", 0) { At = now, By = "Sam" });
        Say("Lee", "why");
        Assert.Equal("Sam", state.CheckIn!.By);
        Assert.True(state.CheckIn.Ask <= now);

        Say("Sam", "handover to Lee");

        Assert.Equal("Lee", state.CheckIn!.By);
        Assert.True(state.CheckIn.Ask > now);
    }

    [Fact]
    public void Who_watches_is_told_how_it_stands_and_asked_nothing_until_they_stop()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");

        var reply = Say("Lee", "watch", "xmpp");

        Assert.Contains("Known so far: ", reply.Say.Full, StringComparison.Ordinal);
        Assert.Null(reply.Ask);
        Assert.Equal("xmpp", state.Crew.Watching["Lee"]);
        Assert.Null(Say("Lee", "status").Ask);
        Assert.NotNull(Say("Sam", "status").Ask);
        Assert.NotNull(Say("Lee", "unwatch").Ask);
    }

    [Fact]
    public void The_only_one_on_site_does_not_watch()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");

        Assert.Contains("only one on site", Say("Sam", "watch").Say.Full, StringComparison.Ordinal);
        Assert.Empty(state.Crew.Watching);
    }

    [Fact]
    public void Who_leaves_is_not_on_the_visit_and_whatever_they_say_brings_them_back_as_they_were()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");

        Assert.Contains("You have left the visit.", Say("Lee", "leave").Say.Full, StringComparison.Ordinal);
        Assert.Equal(["Sam"], VisitCrew.Of(state).Select(m => m.Name));

        var back = Say("Lee", "ok");
        Assert.Contains("You are on the visit again.", back.Say.Full, StringComparison.Ordinal);
        Assert.Contains("Only somebody on site", back.Say.Full, StringComparison.Ordinal);
        Assert.Equal("helping", VisitCrew.RoleOf(state, "Lee"));
    }

    [Fact]
    public void The_last_one_on_site_is_asked_whom_to_hand_over_to_and_leaves_when_they_say_it_again()
    {
        Join("Sam", "on-site");
        Join("Lee", "helping");

        Assert.Contains("handover to Lee", Say("Sam", "leave").Say.Full, StringComparison.Ordinal);
        Assert.Equal("on-site", state.People["Sam"]);
        Assert.Contains("nobody is on site now", Say("Sam", "leave").Say.Full, StringComparison.Ordinal);
        Assert.False(state.People.ContainsKey("Sam"));
    }

    [Fact]
    public void How_a_visit_stands_is_summed_up_without_a_question_and_without_anything_happening()
    {
        var version = state.Version;

        var summary = ((ITurnEngine)Engine).Summary(state, now);

        Assert.Contains("Known so far: ", summary.Say.Full, StringComparison.Ordinal);
        Assert.Null(summary.Ask);
        Assert.Equal(version, state.Version);
    }

    private void Join(string person, string role) => Apply(new PersonJoined("p-" + person, role) { At = now, By = person });

    private void Apply(VisitEvent happened) => state = state.Apply(happened with { Number = state.Version + 1 });

    private Reply Say(string by, string text, string channel = "chat")
    {
        now += TimeSpan.FromMinutes(1);
        var turn = Engine.Take(state, new($"m-{state.Version}", channel, "c", by, now, text));
        state = turn.After;
        return turn.Reply;
    }
}
