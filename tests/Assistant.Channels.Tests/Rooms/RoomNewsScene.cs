using Assistant.Channels.Rooms;
using Assistant.Channels.Tests.Text;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Rooms;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;

namespace Assistant.Channels.Tests.Rooms;

/// <summary>A visit that Kim has on the page, with a room of a chat server and a team's thread on it.</summary>
internal sealed class RoomNewsScene : IAsyncDisposable
{
    public const string ChatRoom = "service@rooms.chat.example";
    public const string TeamThread = "invented-thread";

    public static readonly DateTimeOffset Morning = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-news-").FullName;
    private readonly RoomNews news = new(Spoken.Engine, Spoken.Book);
    private int count;

    public EventLog Log { get; private set; } = null!;

    public HandClock Clock { get; } = new(Morning);

    public ConversationService Conversations { get; private set; } = null!;

    public RoomStore Rooms => new(Log.Database);

    public ReplyOutbox Outbox => new(Log.Database);

    public string Visit { get; private set; } = "";

    public static async Task<RoomNewsScene> OpenAsync()
    {
        var scene = new RoomNewsScene();
        scene.Log = await EventLog.OpenAsync(new SqliteRecords(Path.Combine(scene.folder, "records.db")));
        scene.Conversations = new(scene.Log, Spoken.Engine);
        await scene.Rooms.SaveAsync(new("xmpp", ChatRoom, null, IsGroup: true, CanEdit: false));
        await scene.Rooms.SaveAsync(new("team", TeamThread, "{}", IsGroup: true, CanEdit: true));
        scene.Visit = (await scene.Conversations.OpenVisitAsync(new("page", "p-1", "Invented Diner", null, default, "Kim", Morning))).VisitId;
        await scene.SayAsync("page", "p-1", "Kim", "cold room is warm");
        await scene.SayAsync("page", "p-1", "Kim", "ok");
        return scene;
    }

    /// <summary>Puts a conversation on the visit, as "join" does.</summary>
    public async Task JoinAsync(string channel, string conversation)
    {
        var people = new Records.People.PeopleService(Log, Records.Signing.SigningKey.Open(folder), Clock);
        Assert.IsType<Records.People.Joined>(await people.Visits.JoinAsync(Visit, null, channel, conversation));
    }

    public Task<Reply> SayAsync(string channel, string conversation, string person, string text)
    {
        Clock.Add(TimeSpan.FromSeconds(10));
        return Conversations.HandleAsync(new($"{conversation} m-{++count}", channel, conversation, person, Clock.Now, text), outbox: channel != "page");
    }

    /// <summary>What the room is told now, or null where nothing.</summary>
    public async Task<Reply?> TellAsync(string channel, string conversation)
    {
        var room = (await Rooms.FindAsync(channel, conversation))!;
        var events = await Log.ReadAsync(room.VisitId!);
        var post = news.Of(room, events, await Rooms.ShownAsync(room));
        Assert.True(await Rooms.ToldAsync(room, events.Length, post, Clock.Now));
        return post;
    }

    public async Task<VisitState> StateAsync() => VisitState.Fold(await Log.ReadAsync(Visit));

    public async ValueTask DisposeAsync()
    {
        Conversations.Dispose();
        await Log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }
}
