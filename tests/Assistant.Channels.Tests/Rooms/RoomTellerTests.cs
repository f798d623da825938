using System.Collections.Concurrent;
using Assistant.Channels.Rooms;
using Assistant.Channels.Tests.Text;
using Assistant.Records.Rooms;
using Microsoft.Extensions.Logging;
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
        using var teller = Teller(scene, new BrokenPoster(), NullLogger<RoomTeller>.Instance);
        await teller.StartAsync(default);

        await scene.SayAsync("page", "p-1", "Kim", "R404A cooler");
        await UntilToldAsync(scene);
        await scene.SayAsync("page", "p-1", "Kim", "box 50");
        await UntilToldAsync(scene);

        Assert.False(teller.ExecuteTask!.IsCompleted);
        await teller.StopAsync(default);
    }

    [Fact]
    public async Task What_fails_at_every_look_is_logged_once_until_it_goes_well_again()
    {
        await using var scene = await OpenAsync();
        await scene.JoinAsync("team", TeamThread);
        var (poster, log) = (new BrokenPoster(), new Lines());
        using var teller = Teller(scene, poster, log);
        await teller.StartAsync(default);

        await scene.SayAsync("page", "p-1", "Kim", "R404A cooler");
        await UntilAsync(() => poster.Tried >= 6);
        Assert.Equal("not foreseen", Assert.Single(log.All).Split(": ")[^1]);

        poster.IsBroken = false;
        await UntilAsync(() => log.All.Count == 2);
        poster.IsBroken = true;
        var before = poster.Tried;
        await scene.SayAsync("page", "p-1", "Kim", "box 50");
        await UntilAsync(() => log.All.Count == 3);

        Assert.Contains("goes on again", log.All.ElementAt(1), StringComparison.Ordinal);
        Assert.Contains("not foreseen", log.All.ElementAt(2), StringComparison.Ordinal);
        Assert.True(poster.Tried > before);
        await teller.StopAsync(default);
    }

    private static RoomTeller Teller(RoomNewsScene scene, IRoomPoster poster, ILogger<RoomTeller> log)
    {
        var pace = new RoomPace(TimeSpan.FromMilliseconds(50), TimeSpan.FromSeconds(1)) { Beat = TimeSpan.FromMilliseconds(20), BetweenLooks = TimeSpan.FromMilliseconds(100) };
        var reminders = new RoomReminders(scene.Log, scene.Conversations, Spoken.Engine, Spoken.Book, "xmpp", scene.Clock);
        return new(scene.Log, scene.Rooms, new(Spoken.Engine, Spoken.Book), new(scene.Log.Database, new(Spoken.Engine, Spoken.Book), poster), reminders, pace, TimeProvider.System, log);
    }

    private static async Task UntilAsync(Func<bool> isSo)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(60); !isSo(); await Task.Delay(20))
        {
            Assert.True(DateTimeOffset.UtcNow < until, "It did not come to that.");
        }
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
        private int tried;

        public bool IsBroken { get; set; } = true;

        public int Tried => tried;

        public Task<string?> PutAsync(Room room, string text, CancellationToken cancellation)
        {
            Interlocked.Increment(ref tried);
            return IsBroken ? throw new InvalidCastException("not foreseen") : Task.FromResult<string?>("post-1");
        }
    }

    private sealed class Lines : ILogger<RoomTeller>
    {
        public ConcurrentQueue<string> All { get; } = new();

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => All.Enqueue(formatter(state, exception));
    }
}
