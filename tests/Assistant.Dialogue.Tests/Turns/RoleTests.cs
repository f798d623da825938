using Assistant.Dialogue.Turns;
using Assistant.Dialogue.Visits;

namespace Assistant.Dialogue.Tests.Turns;

/// <summary>Who helps from afar asks, reads along and answers; what is safe only those see who stand there.</summary>
public sealed class RoleTests
{
    private static readonly TurnEngine Engine = Conversation.Engine(FakeUnderstanding.Understand, _ => Conversation.Nothing, (_, _) => null);

    [Theory]
    [InlineData("helping")]
    [InlineData("office")]
    public void A_safety_step_is_confirmed_by_nobody_who_is_elsewhere(string role)
    {
        var turn = Say(Joined("lee", role), "lee", "ok");

        Assert.DoesNotContain(turn.Events, e => e is StopConfirmed);
        Assert.Contains("Only somebody on site can say that", turn.Reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal("hazards", turn.Reply.Walk!.Stop);
    }

    [Fact]
    public void It_is_confirmed_by_one_on_site_by_one_nobody_gave_a_role_and_by_the_one_it_was_handed_to()
    {
        Assert.Contains(Say(Joined("lee", "on-site"), "lee", "ok").Events, e => e is StopConfirmed);
        Assert.Contains(Say(Joined("lee", "helping"), "ada", "ok").Events, e => e is StopConfirmed);
        Assert.Contains(Say(Joined("lee", "helping") with { HandedTo = "Lee" }, "lee", "ok").Events, e => e is StopConfirmed);
    }

    private static VisitState Joined(string person, string role) =>
        new Conversation().State.Apply(new PersonJoined("p-1", role) { At = Conversation.Start, By = person });

    private static Turn Say(VisitState state, string by, string text) =>
        Engine.Take(state, new($"m-{state.Version}", "chat", "c", by, Conversation.Start.AddMinutes(1), text));
}
