using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Outbox;
using Assistant.Records.People;
using Assistant.Records.Rooms;
using Assistant.Records.Signing;
using Assistant.Records.Tests.Support;

namespace Assistant.Records.Tests.Rooms;

public abstract class RoomStoreTests(Store store)
{
    private static readonly Room Thread = new("team", "thread-1", """{"serviceUrl":"http://127.0.0.1:1/"}""", IsGroup: true, CanEdit: true);

    [Fact]
    public async Task A_room_is_on_the_visit_its_conversation_is_on_and_behind_once_the_visit_grows()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var rooms = new RoomStore(records.Database);
        await rooms.SaveAsync(Thread with { CanEdit = false });
        Assert.Null((await rooms.FindAsync("team", "thread-1"))!.VisitId);
        await service.HandleAsync(Invented.Message("m-1"));
        var visit = (await records.Log.VisitOfAsync("chat", "c-1"))!;

        await new PeopleService(records.Log, SigningKey.Open(records.Folder), TimeProvider.System).Visits.JoinAsync(visit, null, "team", "thread-1");

        Assert.Equal(visit, (await rooms.FindAsync("team", "thread-1"))!.VisitId);
        Assert.Empty(await rooms.BehindAsync());
        await service.HandleAsync(Invented.Message("m-2"));
        Assert.Equal("thread-1", Assert.Single(await rooms.BehindAsync()).Conversation);
        Assert.Equal("thread-1", Assert.Single(await rooms.BehindAsync([visit, "another"])).Conversation);
        Assert.Empty(await rooms.BehindAsync(["another"]));
    }

    [Fact]
    public async Task A_room_that_opens_a_visit_is_on_it_and_its_summary_begins_anew()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var rooms = new RoomStore(records.Database);
        await rooms.SaveAsync(Thread);

        await service.HandleAsync(Invented.Message("m-1", conversation: "thread-1") with { Channel = "team" });

        var room = (await rooms.FindAsync("team", "thread-1"))!;
        Assert.Equal((await records.Log.VisitOfAsync("team", "thread-1"), 0), (room.VisitId, room.Told));
        await using (var held = (await HeldRoom.TakeAsync(records.Database, "team", "thread-1"))!)
        {
            await held.SummedUpAsync("post-1", "digest");
        }

        Assert.Equal(("post-1", "digest"), await SummaryAsync(rooms));
        await service.OpenVisitAsync(new("team", "thread-1", "Invented Diner", null, default, "Robin", Invented.Morning));
        Assert.Equal((null, null), await SummaryAsync(rooms));
    }

    [Fact]
    public async Task Of_two_programs_that_tell_a_room_the_same_one_does()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var rooms = new RoomStore(records.Database);
        await rooms.SaveAsync(Thread with { CanEdit = false });
        await service.HandleAsync(Invented.Message("m-1", conversation: "thread-1") with { Channel = "team" });
        var room = Assert.Single(await rooms.BehindAsync());
        var version = VisitState.Fold(await records.Log.ReadAsync(room.VisitId!)).Version;

        var told = await Task.WhenAll(Enumerable.Range(0, 4).Select(i => Task.Run(() => rooms.ToldAsync(room, version, CountingEngine.Saying($"news by {i}"), Invented.Morning))));

        Assert.Single(told, t => t);
        Assert.StartsWith("news by", Assert.Single(await new ReplyOutbox(records.Database).DueAsync("team", Invented.Morning)).Reply.Say.Full, StringComparison.Ordinal);
        Assert.Equal(version, await rooms.ShownAsync(room));
        Assert.Empty(await rooms.BehindAsync());
    }

    [Fact]
    public async Task A_room_without_its_summary_is_behind()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var rooms = new RoomStore(records.Database);
        await service.HandleAsync(Invented.Message("m-1", conversation: "thread-1") with { Channel = "team" });
        await rooms.SaveAsync(Thread);
        Assert.Single(await rooms.BehindAsync());

        await using (var held = (await HeldRoom.TakeAsync(records.Database, "team", "thread-1"))!)
        {
            await held.SummedUpAsync("post-1", "digest");
        }

        Assert.Empty(await rooms.BehindAsync());
    }

    [Fact]
    public async Task While_one_program_changes_a_summary_no_other_does()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await new RoomStore(records.Database).SaveAsync(Thread);
        await using var held = await HeldRoom.TakeAsync(records.Database, "team", "thread-1");

        await using var second = await HeldRoom.TakeAsync(records.Database, "team", "thread-1");

        // Only PostgreSQL has more than one program on it.
        Assert.Equal(store == Store.Postgres, second is null);
    }

    [Fact]
    public async Task That_a_service_changes_no_posts_is_kept_until_the_room_is_reached_otherwise()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        var rooms = new RoomStore(records.Database);
        await rooms.SaveAsync(Thread);
        await rooms.CanNotEditAsync(Thread);
        await rooms.SaveAsync(Thread);
        Assert.False((await rooms.FindAsync("team", "thread-1"))!.CanEdit);

        await rooms.SaveAsync(Thread with { Reference = "another" });

        Assert.True((await rooms.FindAsync("team", "thread-1"))!.CanEdit);
    }

    [Fact]
    public async Task A_room_that_is_gone_is_on_no_visit_and_what_waits_for_it_is_given_up()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        using var service = new ConversationService(records.Log, new CountingEngine());
        var (rooms, outbox) = (new RoomStore(records.Database), new ReplyOutbox(records.Database));
        await rooms.SaveAsync(Thread);
        await service.HandleAsync(Invented.Message("m-1", conversation: "thread-1") with { Channel = "team" }, outbox: true);

        await rooms.ForgetAsync("team", "thread-1", Invented.Morning, "it was sent out of the room");

        Assert.Null(await rooms.FindAsync("team", "thread-1"));
        Assert.Null(await records.Log.VisitOfAsync("team", "thread-1"));
        Assert.Empty(await outbox.DueAsync("team", Invented.Morning));
        Assert.Equal("it was sent out of the room", Assert.Single(await outbox.LostAsync("team")).Trouble);
    }

    [Fact]
    public async Task Up_to_where_a_room_was_listened_to_is_there_after_a_restart()
    {
        await using var records = await TemporaryRecords.OpenAsync(store);
        await new RoomListening(records.Database, "xmpp").WriteAsync("service@rooms.chat.example", new(Invented.Morning, Invented.Morning.AddMinutes(3), """["a1"]"""));

        var place = (await new RoomListening(records.Database, "xmpp").ReadAsync())["service@rooms.chat.example"];

        Assert.Equal(new(Invented.Morning, Invented.Morning.AddMinutes(3), """["a1"]"""), place);
    }

    private static async Task<(string?, string?)> SummaryAsync(RoomStore rooms)
    {
        var room = (await rooms.FindAsync("team", "thread-1"))!;
        return (room.SummaryId, room.SummaryDigest);
    }
}

public sealed class RoomStoreTestsOnSqlite() : RoomStoreTests(Store.Sqlite);

public sealed class RoomStoreTestsOnPostgres() : RoomStoreTests(Store.Postgres);
