using Assistant.Channels.Rooms;
using Assistant.Channels.Tests.Text;
using Assistant.Records.Rooms;
using Microsoft.Extensions.Logging.Abstractions;
using static Assistant.Channels.Tests.Rooms.RoomNewsScene;

namespace Assistant.Channels.Tests.Rooms;

public sealed class RoomTellerTests
{
    [Fact]
    public async Task A_thread_whose_summary_fails_in_a_way_nobody_foresaw_holds_up_neither_the_other_rooms_nor_the_program()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("team", TeamThread);
        await scene.JoinAsync("xmpp", ChatRoom);
        var pace = new RoomPace(TimeSpan.FromMilliseconds(50), TimeSpan.FromSeconds(1)) { BetweenLooks = TimeSpan.FromMilliseconds(100) };
        var reminders = new RoomReminders(scene.Log, scene.Conversations, Spoken.Engine, Spoken.Book, "xmpp", scene.Clock);
        using var teller = new RoomTeller(
            scene.Log, scene.Rooms, new(Spoken.Engine, Spoken.Book), new(scene.Log.Database, new(Spoken.Engine, Spoken.Book), new BrokenPoster()), reminders, pace,
            TimeProvider.System, NullLogger<RoomTeller>.Instance);
        await teller.StartAsync(default);

        await scene.SayAsync("page", "p-1", "Kim", "R404A cooler");
        await UntilToldAsync(scene);
        await scene.SayAsync("page", "p-1", "Kim", "box 50");
        await UntilToldAsync(scene);

        Assert.False(teller.ExecuteTask!.IsCompleted);
        await teller.StopAsync(default);
    }

    private static async Task UntilToldAsync(RoomNewsScene scene)
    {
        var version = (await scene.Log.ReadAsync(scene.Visit)).Length;
        for (var until = DateTimeOffset.UtcNow.AddSeconds(60); (await scene.Rooms.FindAsync("xmpp", ChatRoom))!.Told < version; await Task.Delay(20))
        {
            Assert.True(DateTimeOffset.UtcNow < until, "The room was not told.");
        }
    }

    private sealed class BrokenPoster : IRoomPoster
    {
        public Task<string?> PutAsync(Room room, string text, CancellationToken cancellation) => throw new InvalidCastException("not foreseen");
    }
}
