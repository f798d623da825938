using Assistant.Channels.Xmpp;
using Assistant.Dialogue.Visits;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.Records.Log;
using Assistant.Records.Storage.Rows;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>A chat server with a room, and the program as its component.</summary>
internal sealed class RoomScene : IAsyncDisposable
{
    public const string Coldwalk = "Coldwalk";

    private RoomScene(Prosody prosody)
    {
        Prosody = prosody;
        Server = new(Directory.CreateTempSubdirectory("coldwalk-rooms-").FullName, []) { Environment = prosody.Environment };
    }

    public Prosody Prosody { get; }

    public AppServer Server { get; }

    /// <summary>The chat server with these people's accounts; the program is not started yet.</summary>
    public static async Task<RoomScene> OpenAsync(params string[] accounts)
    {
        Assert.True(Prosody.IsInstalled, "The package prosody is wanted; tests/run installs it on Debian.");
        var scene = new RoomScene(new(accounts));
        await scene.Prosody.StartAsync();
        return scene;
    }

    /// <summary>Signs a person in and has them sit in the room.</summary>
    /// <param name="lines">How many lines of what was said before they want.</param>
    public async Task<ChatPerson> SitAsync(string name, int lines = 0)
    {
        var person = ChatPerson.SignIn(name, Prosody.PeoplePort);
        await person.EnterAsync(char.ToUpperInvariant(name[0]) + name[1..], lines);
        return person;
    }

    /// <summary>Gives a person of the firm a code to enrol with. The program must not be running.</summary>
    public async Task<string> EnrolAsync(string person, params string[] roles)
    {
        var added = await AppRun.OfAsync(["people", "add", person, "--firm", "Invented Cooling", .. roles.SelectMany(r => new[] { "--role", r }), "--data", Server.Data]);
        Assert.Equal(0, added.ExitCode);
        return (await AppRun.OfAsync(["people", "code", person, "--data", Server.Data])).Output.Split(' ')[0];
    }

    /// <summary>Says it and reads the answer.</summary>
    /// <param name="beside">Who reads it too before anybody goes on: a server gives a room's lines to one after the other.</param>
    public static async Task<ChatPerson.Line> SayAsync(ChatPerson person, string text, params ChatPerson[] beside)
    {
        var before = person.Screen.Count;
        person.Say(text);
        var answer = await person.ReadAsync(l => l.From == Coldwalk, before);
        foreach (var other in beside)
        {
            await other.ReadAsync(l => l.From == Coldwalk && l.Id == answer.Id);
        }

        return answer;
    }

    /// <summary>Writes it to the program directly and reads the answer.</summary>
    public static async Task<ChatPerson.Line> TellAsync(ChatPerson person, string text)
    {
        var before = person.Screen.Count;
        person.Tell($"coldwalk@coldwalk.{Prosody.Host}", text);
        return await person.ReadAsync(l => l.From == $"coldwalk@coldwalk.{Prosody.Host}", before);
    }

    public static int Replies(ChatPerson person) => person.Screen.Count(l => l.From == Coldwalk);

    public static string Shown(ChatPerson person) => string.Join('\n', person.Screen.Select(l => $"{l.From} {l.Id}: {l.Text}"));

    public static async Task UntilAsync(Func<bool> holds, Func<string> what)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(60); !holds(); await Task.Delay(50))
        {
            Assert.True(DateTimeOffset.UtcNow < until, what());
        }
    }

    /// <summary>Waits until so many messages are answered and the answers are in the room.</summary>
    public async Task AnsweredAsync(int messages, Func<string> what)
    {
        var database = new SqliteRecords(Path.Combine(Server.Data, "coldwalk.db"));
        for (var until = DateTimeOffset.UtcNow.AddSeconds(60); ; await Task.Delay(100))
        {
            await using var context = database.NewContext();
            if (await context.Outbox.CountAsync(o => o.Channel == XmppSettings.Channel && !o.MessageId.StartsWith("news ") && o.DeliveredAt != null) >= messages)
            {
                return;
            }

            Assert.True(DateTimeOffset.UtcNow < until, what());
        }
    }

    /// <summary>What the program has stored of the room, once it is stopped.</summary>
    public async Task<(IReadOnlyList<OutboxRow> Outbox, VisitState State)> StoredAsync()
    {
        await Server.KillAsync();
        var database = new SqliteRecords(Path.Combine(Server.Data, "coldwalk.db"));
        await using var log = await EventLog.OpenAsync(database);
        var visit = await log.VisitOfAsync(XmppSettings.Channel, Prosody.Room);
        var state = VisitState.Fold(await log.ReadAsync(visit!));
        await using var context = database.NewContext();
        var rows = await context.Outbox.AsNoTracking().OrderBy(o => o.Id).ToListAsync();
        SqliteConnection.ClearAllPools();
        return (rows, state);
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        Prosody.Dispose();
    }
}
