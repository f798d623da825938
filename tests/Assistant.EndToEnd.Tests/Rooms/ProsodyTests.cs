using Assistant.Channels.Tests.Text;
using Assistant.Channels.Xmpp;
using Assistant.Dialogue.Visits;
using Assistant.EndToEnd.Tests.Fixtures;
using Assistant.Records.Log;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace Assistant.EndToEnd.Tests.Rooms;

/// <summary>People in a room of a real chat server (Debian package prosody) with the program as its component, on loopback.</summary>
public sealed class ProsodyTests : IAsyncLifetime, IDisposable
{
    private readonly ITestOutputHelper output;
    private readonly Prosody prosody = new("kim", "lee", "sam");
    private readonly AppServer server;

    public ProsodyTests(ITestOutputHelper output)
    {
        Assert.True(Prosody.IsInstalled, "The package prosody is wanted; tests/run installs it on Debian.");
        this.output = output;
        server = new(Directory.CreateTempSubdirectory("coldwalk-rooms-").FullName, []) { Environment = prosody.Environment };
    }

    public Task InitializeAsync() => prosody.StartAsync();

    [Fact]
    public async Task Two_people_in_a_room_talk_through_one_visit()
    {
        using var kim = await SitAsync("kim", "Kim");
        using var lee = await SitAsync("lee", "Lee");
        await server.InitializeAsync();
        await kim.UntilInAsync("Coldwalk");

        await SayAsync(kim, "Coldwalk: cold room is warm");
        await SayAsync(lee, "ok");
        await SayAsync(kim, "R404A cooler");
        await SayAsync(lee, "box 50");
        await SayAsync(kim, "probe 51");

        var (_, state) = await StoredAsync();
        Assert.Equal("Lee", Taken(state, "box_temperature").By);
        Assert.Equal("Kim", Taken(state, "box_temperature_check").By);
        Assert.Equal(5, Replies(kim));
        Assert.Equal(5, Replies(lee));
    }

    [Fact]
    public async Task With_server_and_program_killed_in_between_the_call_comes_to_the_same_and_no_reply_is_lost_or_doubled()
    {
        await using var calm = await TextScene.OpenAsync();
        var expected = (await new TextSchedule(calm, "+15551000000", null).RunAsync()).Outcome;
        var (kim, lee) = (await SitAsync("kim", "Kim"), await SitAsync("lee", "Lee"));
        await server.InitializeAsync();
        await kim.UntilInAsync("Coldwalk");
        var (texts, speaker) = (0, kim);
        for (var burst = 0; burst < WarmBoxCall.Bursts.Length; burst++)
        {
            if (burst is 2 or 5)
            {
                // What is said while the program is away waits in the room.
                await server.KillAsync();
            }

            foreach (var text in WarmBoxCall.Bursts[burst])
            {
                speaker = speaker == kim ? lee : kim;
                await ToldAsync(speaker, texts == 0 ? "Coldwalk: " + text : text);
                texts++;
            }

            if (burst is 2 or 5)
            {
                await server.StartAgainAsync();
            }

            if (burst is 1 or 5 or 7)
            {
                // In the middle of the answers, and once with the program still on its way in.
                prosody.Kill();
                kim.Dispose();
                lee.Dispose();
                await Task.Delay(500);
                await prosody.StartAsync();
                (kim, lee) = (await SitAsync("kim", "Kim", lines: 200), await SitAsync("lee", "Lee", lines: 200));
                speaker = kim;
            }

            await UntilAsync(() => kim.Screen.Where(l => l.From == "Coldwalk").DistinctBy(l => l.Id).Count() >= texts, () => Shown(kim));
        }

        // Nothing comes after what was waited for.
        await Task.Delay(2000);
        using var sam = await SitAsync("sam", "Sam", lines: 500);
        var (rows, state) = await StoredAsync();
        Assert.Equal(expected, WarmBoxCall.Outcome(state));
        Assert.Equal(texts, rows.Count);
        Assert.All(rows, row => Assert.NotNull(row.DeliveredAt));
        Assert.True(Replies(sam) == texts, Shown(sam));
        output.WriteLine($"{texts} messages of two people; the chat server killed three times, the program twice; {Replies(sam)} replies, each once");
        kim.Dispose();
        lee.Dispose();
    }

    [Fact]
    public async Task A_wrong_secret_is_told_on_the_error_stream()
    {
        prosody.Environment["COLDWALK_XMPP_SECRET"] = "another-secret-altogether";

        await server.InitializeAsync();

        await UntilAsync(() => server.Errors.Contains("the secret is not the one the server has for this component", StringComparison.Ordinal), () => server.Errors);
        Assert.Contains("Tried again in", server.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("another-secret-altogether", server.Errors, StringComparison.Ordinal);
    }

    private static async Task<ChatPerson.Line> SayAsync(ChatPerson person, string text)
    {
        var before = person.Screen.Count;
        person.Say(text);
        return await person.ReadAsync(l => l.From == "Coldwalk", before);
    }

    private static int Replies(ChatPerson person) => person.Screen.Count(l => l.From == "Coldwalk");

    /// <summary>Says it, and waits until the room has it.</summary>
    private static async Task ToldAsync(ChatPerson person, string text)
    {
        var before = person.Screen.Count;
        person.Say(text);
        await person.ReadAsync(l => l.Text == text, before);
    }

    private static async Task UntilAsync(Func<bool> holds, Func<string> what)
    {
        for (var until = DateTimeOffset.UtcNow.AddSeconds(60); !holds(); await Task.Delay(50))
        {
            Assert.True(DateTimeOffset.UtcNow < until, what());
        }
    }

    private static string Shown(ChatPerson person) => string.Join('\n', person.Screen.Select(l => $"{l.From} {l.Id}: {l.Text}"));

    private static TakenFact Taken(VisitState state, string fact) => state.History.Single(h => h.Key.Name == fact).Value.Single();

    private async Task<ChatPerson> SitAsync(string name, string nick, int lines = 0)
    {
        var person = ChatPerson.SignIn(name, prosody.PeoplePort);
        await person.EnterAsync(nick, lines);
        return person;
    }

    private async Task<(IReadOnlyList<Records.Storage.Rows.OutboxRow> Outbox, VisitState State)> StoredAsync()
    {
        await server.KillAsync();
        var database = new SqliteRecords(Path.Combine(server.Data, "coldwalk.db"));
        await using var log = await EventLog.OpenAsync(database);
        var visit = await log.VisitOfAsync(XmppSettings.Channel, Prosody.Room);
        var state = VisitState.Fold(await log.ReadAsync(visit!));
        await using var context = database.NewContext();
        var rows = await context.Outbox.AsNoTracking().OrderBy(o => o.Id).ToListAsync();
        SqliteConnection.ClearAllPools();
        return (rows, state);
    }

    public async Task DisposeAsync()
    {
        await server.DisposeAsync();
        Dispose();
    }

    public void Dispose()
    {
        prosody.Dispose();
        server.Dispose();
    }
}
