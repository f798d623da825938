using Assistant.Channels.Xmpp;
using Assistant.Records.Log;
using Assistant.Records.Rooms;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;

namespace Assistant.Channels.Tests.Xmpp;

public sealed class RoomPlacesTests : IAsyncLifetime
{
    private static readonly Jid Room = Jid.Parse("service@rooms.chat.example");
    private static readonly DateTimeOffset Came = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-places-").FullName;
    private EventLog log = null!;

    private string File => Path.Combine(folder, "rooms.json");

    public async Task InitializeAsync() => log = await EventLog.OpenAsync(new SqliteRecords(Path.Combine(folder, "coldwalk.db")));

    [Fact]
    public async Task Of_a_room_that_is_new_nothing_is_asked_for() => Assert.Null((await StartAsync()).Since(Room));

    [Fact]
    public async Task After_a_restart_what_was_said_since_is_asked_for_and_what_is_known_is_known()
    {
        var before = await StartAsync();
        await before.BeginAsync(Room, Came, default);
        await before.PassAsync(Said("a1", Came.AddMinutes(30)), default);

        var after = await StartAsync();

        Assert.InRange(after.Since(Room)!.Value, Came.AddMinutes(25), Came.AddMinutes(30));
        Assert.True(after.Knows(Said("a1", Came.AddMinutes(30))));
        Assert.False(after.Knows(Said("a2", Came.AddMinutes(30))));
    }

    [Fact]
    public async Task What_was_said_before_we_first_came_is_none_of_ours()
    {
        var places = await StartAsync();
        await places.BeginAsync(Room, Came, default);

        Assert.True(places.Knows(Said("a0", Came.AddSeconds(-1))));
        Assert.False(places.Knows(Said("a1", Came.AddSeconds(1))));
    }

    [Fact]
    public async Task What_an_earlier_release_kept_in_a_file_is_taken_over_once()
    {
        await System.IO.File.WriteAllTextAsync(File, """{"service@rooms.chat.example":{"From":"2026-11-25T12:00:00+00:00","At":"2026-11-25T12:30:00+00:00","Ids":[{"Id":"a1","At":"2026-11-25T12:30:00+00:00"}]}}""");

        var places = await StartAsync();
        await places.PassAsync(Said("a2", Came.AddMinutes(35)), default);
        var after = await StartAsync();

        Assert.True(places.Knows(Said("a1", Came.AddMinutes(30))));
        Assert.True(after.Knows(Said("a2", Came.AddMinutes(35))));
        Assert.InRange(after.Since(Room)!.Value, Came.AddMinutes(30), Came.AddMinutes(35));
    }

    [Fact]
    public async Task A_file_that_is_damaged_is_as_none()
    {
        await System.IO.File.WriteAllTextAsync(File, "{\"service@");

        Assert.Null((await StartAsync()).Since(Room));
    }

    public async Task DisposeAsync()
    {
        await log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private async Task<RoomPlaces> StartAsync()
    {
        var places = new RoomPlaces(new RoomListening(log.Database, XmppSettings.Channel), File);
        await places.ReadAsync(default);
        return places;
    }

    private static RoomWords Said(string id, DateTimeOffset at) => new(id, Room, "Kim", null, at, "47", IsToUs: true, IsCorrection: false);
}
