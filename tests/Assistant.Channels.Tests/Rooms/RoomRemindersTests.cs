using Assistant.Channels.Rooms;
using Assistant.Channels.Tests.Text;
using static Assistant.Channels.Tests.Rooms.RoomNewsScene;

namespace Assistant.Channels.Tests.Rooms;

public sealed class RoomRemindersTests
{
    [Fact]
    public async Task A_reminder_set_in_a_room_is_given_there_once_with_where_the_visit_stands()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("xmpp", ChatRoom);
        await scene.SayAsync("xmpp", ChatRoom, "Lee", "remind me in 15 minutes to read the head");
        await EmptyAsync(scene, "xmpp");
        var reminders = new RoomReminders(scene.Log, scene.Conversations, Spoken.Engine, Spoken.Book, "xmpp", scene.Clock);
        await reminders.GiveDueAsync();
        Assert.Empty(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));

        scene.Clock.Add(TimeSpan.FromMinutes(16));
        await reminders.GiveDueAsync();
        await reminders.GiveDueAsync();

        var given = Assert.Single(await scene.Outbox.DueAsync("xmpp", scene.Clock.Now));
        Assert.Equal(ChatRoom, given.Conversation);
        Assert.StartsWith("Time is up.", given.Reply.Say.Full, StringComparison.Ordinal);
        Assert.NotNull(given.Reply.Ask);
    }

    [Fact]
    public async Task It_is_left_to_the_page_for_a_while_where_its_person_was_heard_there_last()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("team", TeamThread);
        await scene.SayAsync("page", "p-1", "Kim", "remind me in 15 minutes to read the head");
        var reminders = new RoomReminders(scene.Log, scene.Conversations, Spoken.Engine, Spoken.Book, "xmpp", scene.Clock);

        scene.Clock.Add(TimeSpan.FromMinutes(15.5));
        await reminders.GiveDueAsync();
        Assert.Empty(await scene.Outbox.DueAsync("team", scene.Clock.Now));
        scene.Clock.Add(TimeSpan.FromMinutes(2));
        await reminders.GiveDueAsync();

        Assert.StartsWith("Time is up.", Assert.Single(await scene.Outbox.DueAsync("team", scene.Clock.Now)).Reply.Say.Full, StringComparison.Ordinal);
    }

    private static async Task EmptyAsync(RoomNewsScene scene, string channel)
    {
        foreach (var item in await scene.Outbox.DueAsync(channel, scene.Clock.Now))
        {
            await scene.Outbox.HandedOverAsync(item.Id, scene.Clock.Now);
        }
    }
}
