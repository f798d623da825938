using Assistant.Channels.Tests.Text;
using static Assistant.Channels.Tests.Rooms.RoomNewsScene;

namespace Assistant.Channels.Tests.Rooms;

public sealed class RoomNewsTests
{
    [Fact]
    public async Task What_came_in_elsewhere_is_told_in_one_post_with_who_said_it_and_from_where()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.JoinAsync("sms", "+15550100");
        await scene.SayAsync("sms", "+15550100", "Lee", "suction 22 psig");
        await scene.SayAsync("page", "p-1", "Sam", "sight glass flashing, head 180 psig");

        var told = (await scene.TellAsync("xmpp", ChatRoom))!;

        Assert.StartsWith("Lee by text: suction pressure 22 psig; Sam on the page: ", told.Say.Full, StringComparison.Ordinal);
        Assert.Contains("sight glass flashing", told.Say.Full, StringComparison.Ordinal);
        Assert.Contains("180 psig", told.Say.Full, StringComparison.Ordinal);
        Assert.NotNull(told.Ask);
        Assert.Null(await scene.TellAsync("xmpp", ChatRoom));
    }

    [Fact]
    public async Task What_was_said_in_the_room_itself_is_no_news_there_and_is_elsewhere()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.JoinAsync("team", TeamThread);
        await scene.SayAsync("xmpp", ChatRoom, "Lee", "suction 22 psig");

        Assert.Null(await scene.TellAsync("xmpp", ChatRoom));
        Assert.StartsWith("Lee in the chat: suction pressure 22 psig", (await scene.TellAsync("team", TeamThread))!.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_put_right_is_told_as_it_is_now_and_one_taken_back_as_taken_back()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("page", "p-1", "Kim", "suction 22 psig");
        await scene.TellAsync("xmpp", ChatRoom);
        await scene.SayAsync("page", "p-1", "Kim", "undo");

        Assert.Contains("Kim on the page: took back suction pressure 22 psig", (await scene.TellAsync("xmpp", ChatRoom))!.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_two_readings_that_differ_the_summary_lists_neither_and_which_counts_is_told_as_that()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.JoinAsync("sms", "+15550100");
        await scene.SayAsync("page", "p-1", "Kim", "suction 22 psig");
        await scene.SayAsync("sms", "+15550100", "Lee", "suction 35 psig");
        Assert.NotEmpty((await scene.StateAsync()).Disputes);
        await scene.TellAsync("xmpp", ChatRoom);
        var summary = new Assistant.Channels.Rooms.RoomSummary(Spoken.Engine, Spoken.Book);
        var open = summary.Of(await scene.StateAsync()).Split('\n')[0];
        await scene.SayAsync("page", "p-1", "Kim", "the first");

        Assert.DoesNotContain("suction", open, StringComparison.Ordinal);
        Assert.StartsWith("Kim on the page: settled that suction pressure 22 psig by Kim counts.", (await scene.TellAsync("xmpp", ChatRoom))!.Say.Full, StringComparison.Ordinal);
        Assert.Contains("suction pressure 22 psig", summary.Of(await scene.StateAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_verdict_found_elsewhere_is_told_once_with_what_it_rests_on_and_with_the_summary_where_no_post_can_be_changed()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.JoinAsync("team", TeamThread);
        await ProveAsync(scene);
        var verdict = (await scene.StateAsync()).LastVerdict!;

        var (room, thread) = ((await scene.TellAsync("xmpp", ChatRoom))!, (await scene.TellAsync("team", TeamThread))!);

        foreach (var told in new[] { room, thread })
        {
            Assert.Equal(2, told.Say.Full.Split(verdict.Text).Length);
            Assert.NotEmpty(told.Because);
        }

        Assert.Contains("Invented Diner. Read so far:", room.Say.Full, StringComparison.Ordinal);
        Assert.DoesNotContain("Read so far:", thread.Say.Full, StringComparison.Ordinal);
        await scene.SayAsync("page", "p-1", "Kim", "status");
        Assert.Null(await scene.TellAsync("xmpp", ChatRoom));
    }

    [Fact]
    public async Task A_room_whose_people_only_watch_hears_verdicts_and_nothing_else()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("xmpp", ChatRoom, "Lee", "watch");
        await scene.TellAsync("xmpp", ChatRoom);
        await scene.SayAsync("page", "p-1", "Kim", "suction 22 psig");
        Assert.Null(await scene.TellAsync("xmpp", ChatRoom));

        await ProveAsync(scene);

        var told = (await scene.TellAsync("xmpp", ChatRoom))!;
        Assert.Contains((await scene.StateAsync()).LastVerdict!.Text, told.Say.Full, StringComparison.Ordinal);
        Assert.Null(told.Ask);
    }

    [Fact]
    public async Task An_emergency_is_told_even_where_people_only_watch()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("xmpp", ChatRoom, "Lee", "watch");
        await scene.SayAsync("page", "p-1", "Kim", "emergency");

        Assert.Contains("Kim on the page: EMERGENCY", (await scene.TellAsync("xmpp", ChatRoom))!.Say.Full, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_in_the_room_answers_what_the_news_asked()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("page", "p-1", "Kim", "R404A");
        var told = (await scene.TellAsync("xmpp", ChatRoom))!;
        var seen = scene.Outbox;
        var item = (await seen.DueAsync("xmpp", scene.Clock.Now))[0];
        await seen.HandedOverAsync(item.Id, scene.Clock.Now);

        Assert.Equal((await scene.StateAsync()).Version, (await seen.SeenAsync("xmpp", ChatRoom, scene.Clock.Now))!.Version);
        Assert.Equal(told.AskedFact, item.Reply.AskedFact);
        Assert.NotNull(told.AskedFact);
    }

    private static async Task ProveAsync(RoomNewsScene scene)
    {
        foreach (var text in WarmBoxCall.Bursts.SelectMany(b => b))
        {
            if ((await scene.StateAsync()).LastVerdict is { Text.Length: > 0 })
            {
                return;
            }

            await scene.SayAsync("page", "p-1", "Kim", text);
        }

        Assert.Fail("The call gives no verdict.");
    }
}
