using System.Collections.Concurrent;
using Assistant.Channels.Xmpp;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Tests.Xmpp;

/// <summary>The channel at work against a server whose every word the test says.</summary>
internal sealed class XmppScene : IAsyncDisposable, IXmppTalk, ILogger<XmppService>
{
    public const string Room = "service@rooms.chat.example";
    public const string Secret = "invented-coldwalk-secret";

    private readonly string folder = Directory.CreateTempSubdirectory("coldwalk-xmpp-").FullName;
    private readonly EventLog log;
    private readonly XmppService service;

    private XmppScene(EventLog log, FakeChatServer server, TimeSpan beat, TimeSpan doubt)
    {
        (this.log, Server) = (log, server);
        Outbox = new(log.Database);
        var settings = new XmppSettings("127.0.0.1", server.Port, "coldwalk.chat.example", Secret, [Jid.Parse(Room)]);
        var pace = new XmppPace(TimeSpan.FromMilliseconds(50), TimeSpan.FromMilliseconds(200), () => 1) { BeforeReturn = TimeSpan.FromMilliseconds(500), Beat = beat };
        var line = new XmppLine(settings, new(new(log.Database, XmppSettings.Channel)), this, pace, TimeProvider.System, this);
        var deliverer = new OutboxDeliverer(Outbox, new XmppSender(line, settings), new() { Doubt = doubt, FirstWait = TimeSpan.FromSeconds(1) }, TimeProvider.System);
        service = new(settings, line, deliverer, pace, TimeProvider.System, this);
    }

    public FakeChatServer Server { get; }

    public ReplyOutbox Outbox { get; }

    public ConcurrentQueue<RoomWords> InRoom { get; } = new();

    public ConcurrentQueue<DirectWords> Direct { get; } = new();

    public ConcurrentQueue<string> Lines { get; } = new();

    /// <param name="beat">How long the server may be silent; long unless a test waits for it, so that a slow machine is not taken for a silent server.</param>
    /// <param name="doubt">How long a post may go unanswered; long for the same reason.</param>
    public static async Task<XmppScene> OpenAsync(TimeSpan? beat = null, TimeSpan? doubt = null)
    {
        var data = Directory.CreateTempSubdirectory("coldwalk-xmpp-data-").FullName;
        var scene = new XmppScene(await EventLog.OpenAsync(new SqliteRecords(Path.Combine(data, "coldwalk.db"))), new(), beat ?? TimeSpan.FromSeconds(3), doubt ?? TimeSpan.FromSeconds(10));
        await Task.Run(() => scene.service.StartAsync(CancellationToken.None));
        return scene;
    }

    /// <summary>Lets the component in and into its room.</summary>
    /// <returns>What it said on entering.</returns>
    public async Task<System.Xml.Linq.XElement> SeatAsync(string history = "")
    {
        await Server.LetInAsync();
        var entering = await Server.NextAsync("presence");
        Server.Send($"<presence from='{Room}/Kim' to='coldwalk@coldwalk.chat.example/room'><x><item jid='kim@chat.example/phone'/></x><occupant-id id='o-kim'/></presence>");
        Server.Send($"<presence from='{Room}/Coldwalk' to='coldwalk@coldwalk.chat.example/room'><x><status code='100'/><status code='110'/></x><occupant-id id='o-own'/></presence>");
        if (history.Length > 0)
        {
            Server.Send(history);
        }

        Server.Send($"<message type='groupchat' from='{Room}' to='coldwalk@coldwalk.chat.example/room'><subject/></message>");
        return entering;
    }

    public void Say(string id, string text, string more = "") => Server.Send(Message(id, text, more));

    public static string Message(string id, string text, string more = "") =>
        $"<message type='groupchat' from='{Room}/Kim' to='coldwalk@coldwalk.chat.example/room' id='{id}'><body>{text}</body><occupant-id id='o-kim'/><stanza-id by='{Room}' id='{id}'/>{more}</message>";

    public Task ReplyAsync(string to, string id, string text) =>
        Outbox.AddAsync(XmppSettings.Channel, to, id, new(new(text, text), [], [], null, [], null, [], null, []), DateTimeOffset.UtcNow);

    public static async Task UntilAsync(Func<bool> holds, string what)
    {
        for (var until = DateTimeOffset.UtcNow + TimeSpan.FromSeconds(20); !holds(); await Task.Delay(10))
        {
            Assert.True(DateTimeOffset.UtcNow < until, what);
        }
    }

    public Task HearAsync(RoomWords words, CancellationToken cancellation)
    {
        InRoom.Enqueue(words);
        return Task.CompletedTask;
    }

    public Task PostedAsync(Jid room, string id, CancellationToken cancellation) => Task.CompletedTask;

    public Task HearAsync(DirectWords words, CancellationToken cancellation)
    {
        Direct.Enqueue(words);
        return Task.CompletedTask;
    }

    public async ValueTask DisposeAsync()
    {
        await service.StopAsync(CancellationToken.None);
        service.Dispose();
        Server.Dispose();
        await log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    IDisposable? ILogger.BeginScope<TState>(TState state) => null;

    bool ILogger.IsEnabled(LogLevel logLevel) => true;

    void ILogger.Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        Lines.Enqueue($"{logLevel}: {formatter(state, exception)}");
}
