using Assistant.Channels.Xmpp;

namespace Assistant.Channels.Tests.Xmpp;

public sealed class RoomPlacesTests : IDisposable
{
    private static readonly Jid Room = Jid.Parse("service@rooms.chat.example");
    private static readonly DateTimeOffset Came = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-places-").FullName;

    private string File => Path.Combine(folder, "rooms.json");

    [Fact]
    public void Of_a_room_that_is_new_nothing_is_asked_for() => Assert.Null(new RoomPlaces(File).Since(Room));

    [Fact]
    public void After_a_restart_what_was_said_since_is_asked_for_and_what_is_known_is_known()
    {
        var before = new RoomPlaces(File);
        before.Begin(Room, Came);
        before.Pass(Said("a1", Came.AddMinutes(30)));

        var after = new RoomPlaces(File);

        Assert.InRange(after.Since(Room)!.Value, Came.AddMinutes(25), Came.AddMinutes(30));
        Assert.True(after.Knows(Said("a1", Came.AddMinutes(30))));
        Assert.False(after.Knows(Said("a2", Came.AddMinutes(30))));
    }

    [Fact]
    public void What_was_said_before_we_first_came_is_none_of_ours()
    {
        var places = new RoomPlaces(File);
        places.Begin(Room, Came);

        Assert.True(places.Knows(Said("a0", Came.AddSeconds(-1))));
        Assert.False(places.Knows(Said("a1", Came.AddSeconds(1))));
    }

    [Fact]
    public void A_file_that_is_damaged_is_as_none()
    {
        System.IO.File.WriteAllText(File, "{\"service@");

        Assert.Null(new RoomPlaces(File).Since(Room));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static RoomWords Said(string id, DateTimeOffset at) => new(id, Room, "Kim", null, at, "47", IsToUs: true, IsCorrection: false);
}
