using Assistant.Channels.Rooms;
using Assistant.Dialogue.Visits;
using static Assistant.Channels.Tests.Rooms.RoomNewsScene;

namespace Assistant.Channels.Tests.Rooms;

/// <summary>What people say among themselves in a room that is on a visit.</summary>
public sealed class OverheardTests
{
    [Theory]
    [InlineData("who brings the coffee today then?")]
    [InlineData("good morning everybody, did you see the match")]
    [InlineData("I am on my way to the shop and back before lunch")]
    public async Task Small_talk_is_neither_answered_nor_kept(string text)
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        var before = (await scene.StateAsync()).Version;

        await HearAsync(scene, text, isToUs: false);

        Assert.True(before == (await scene.StateAsync()).Version, string.Join(" ; ", (await scene.Log.ReadAsync(scene.Visit)).Skip(before).Select(e => e.ToString())));
        Assert.Empty(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));
    }

    // A phone that spells a name otherwise is the same person: their second reading puts the first right, and does not differ from it.
    [Theory]
    [InlineData("kim", false)]
    [InlineData("  Kim ", false)]
    [InlineData("Sam", true)]
    public async Task One_name_spelled_otherwise_is_one_person(string other, bool differs)
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("team", TeamThread);
        await scene.SayAsync("page", "p-1", "Kim", "suction 30 psig");

        await scene.SayAsync("team", TeamThread, other, "suction 40 psig");

        Assert.Equal(differs, (await scene.Log.ReadAsync(scene.Visit)).OfType<ReadingsDiffer>().Any());
        Assert.Equal(differs ? ["Kim", "Sam"] : ["Kim"], (await scene.StateAsync()).Crew.Heard.Keys.Order());
    }

    [Fact]
    public async Task The_same_said_to_the_assistant_is_answered()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);

        await HearAsync(scene, "good morning everybody, did you see the match", isToUs: true);

        Assert.Single(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));
    }

    [Theory]
    [InlineData("suction 22 psig")]
    [InlineData("R404A")]
    [InlineData("status")]
    [InlineData("what is saturation at 22 psig")]
    public async Task A_reading_an_answer_a_command_and_a_question_are_for_the_visit_without_its_name(string text)
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);

        await HearAsync(scene, text, isToUs: false);

        Assert.Single(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));
        Assert.Equal("Lee", (await scene.Log.ReadAsync(scene.Visit)).OfType<MessageHeard>().Last().By);
    }

    [Fact]
    public async Task Small_talk_of_one_who_works_alone_is_a_sign_of_life_and_still_not_answered()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("xmpp", ChatRoom, "Lee", "check on me every 10 minutes, alert Robin if I don't answer");
        Assert.NotNull((await scene.StateAsync()).CheckIn);
        foreach (var item in await scene.Outbox.DueAsync("xmpp", scene.Clock.Now))
        {
            await scene.Outbox.HandedOverAsync(item.Id, scene.Clock.Now);
        }

        scene.Clock.Add(TimeSpan.FromMinutes(11));
        await HearAsync(scene, "good morning everybody, did you see the match", isToUs: false);

        Assert.True((await scene.StateAsync()).CheckIn!.Ask > scene.Clock.Now);
        Assert.Empty(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));
    }

    private static Task HearAsync(RoomNewsScene scene, string text, bool isToUs) =>
        new RoomDesk(scene.Log, scene.Conversations, scene.Clock).TakeAsync(new($"{ChatRoom} said", "xmpp", ChatRoom, "Lee", scene.Clock.Now, text), isToUs, default);
}
