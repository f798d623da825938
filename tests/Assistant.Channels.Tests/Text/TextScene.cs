using Assistant.Channels.Text;
using Assistant.Dialogue.Visits;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Outbox;
using Assistant.Records.Storage.Sqlite;
using Microsoft.Data.Sqlite;

namespace Assistant.Channels.Tests.Text;

/// <summary>The text channel over records of its own, with a clock that is set by hand and phones that show what reached them.</summary>
internal sealed class TextScene : IAsyncDisposable
{
    public static readonly DateTimeOffset Morning = new(2026, 7, 14, 9, 0, 0, TimeSpan.Zero);

    public static readonly TextSettings Settings = new("secret", "http://127.0.0.1/send", null);

    private readonly string folder = NewFolder();

    private TextScene() => Admitted = People;

    public EventLog Log { get; private set; } = null!;

    public HandClock Clock { get; } = new(Morning);

    public InventedPeople People { get; } = new();

    private ITextPeople Admitted { get; set; } = null!;

    public ConversationService Conversations { get; private set; } = null!;

    public TextDesk Desk { get; private set; } = null!;

    public ReplyOutbox Outbox => new(Log.Database);

    public static async Task<TextScene> OpenAsync()
    {
        var scene = new TextScene();
        scene.Log = await EventLog.OpenAsync(new SqliteRecords(Path.Combine(scene.folder, "records.db")));
        scene.Restart();
        return scene;
    }

    /// <summary>Asks others than the invented people who may text.</summary>
    public void Admit(ITextPeople people)
    {
        Admitted = people;
        Restart();
    }

    /// <summary>Where reports are shown; null where nobody said.</summary>
    public ReportAddress? Reports { get; set; }

    /// <summary>Everything the program keeps in memory is gone; what it stored is there.</summary>
    public void Restart()
    {
        Conversations?.Dispose();
        Conversations = new(Log, Spoken.Engine);
        Desk = new(Log, Conversations, Spoken.Engine, Spoken.Book, Admitted, Settings, Clock, reports: Reports);
    }

    /// <summary>A text that comes in at once and is answered at once.</summary>
    public async Task<string> TextAsync(string number, string text, string? id = null, TimeSpan late = default)
    {
        Clock.Add(TimeSpan.FromMinutes(1));
        var message = id ?? Guid.NewGuid().ToString("N");
        await Desk.ReceiveAsync(message, number, text, Clock.Now - late);
        return await AnswerAsync(message);
    }

    /// <summary>Handles and delivers what waits; the text of the reply to that message, or nothing where it got none.</summary>
    public async Task<string> AnswerAsync(string message)
    {
        await Desk.HandleAllAsync();
        var shown = "";
        while (await Outbox.TakeNextAsync(TextSettings.Channel, Clock.Now, DateTimeOffset.MinValue) is { } item)
        {
            await Outbox.HandedOverAsync(item.Id, Clock.Now);
            shown = item.MessageId == message || item.MessageId.StartsWith("stranger", StringComparison.Ordinal) ? new TextShape(Spoken.Book).Of(item.Reply) : shown;
        }

        return shown;
    }

    public async Task<VisitState> StateAsync(string number) =>
        VisitState.Fold(await Log.ReadAsync((await Log.VisitOfAsync(TextSettings.Channel, number))!));

    public async ValueTask DisposeAsync()
    {
        Conversations.Dispose();
        await Log.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    // Memory where there is some: the wait for a disk is not what these tests are about.
    private static string NewFolder() =>
        Directory.Exists("/dev/shm") ? Directory.CreateDirectory($"/dev/shm/coldwalk-{Guid.NewGuid():N}").FullName : Directory.CreateTempSubdirectory("coldwalk-").FullName;
}

/// <summary>A clock that goes on when it is told to.</summary>
internal sealed class HandClock(DateTimeOffset start) : TimeProvider
{
    public DateTimeOffset Now { get; private set; } = start;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;

    public void Add(TimeSpan time) => Now += time;

    public void Set(DateTimeOffset time) => Now = time;
}

/// <summary>Invented people and their numbers; "+15550000" and what begins so is nobody's.</summary>
internal sealed class InventedPeople : ITextPeople
{
    public const string Code = "K4MX-92LR";

    private readonly HashSet<string> stopped = [];
    private readonly Dictionary<string, string> enrolled = [];

    public HashSet<string> Revoked { get; } = [];

    /// <summary>Numbers at which looking up fails as nobody foresaw.</summary>
    public HashSet<string> Confused { get; } = [];

    public Task<string?> NameOfAsync(string number, CancellationToken cancellation) => Confused.Contains(number) ? throw new InvalidOperationException("invented") : Task.FromResult(
        Revoked.Contains(number) ? null : enrolled.TryGetValue(number, out var name) ? name : number.StartsWith("+15550000", StringComparison.Ordinal) ? null : "Robin " + number[^2..]);

    public Task<bool> IsStoppedAsync(string number, CancellationToken cancellation) => Task.FromResult(stopped.Contains(number));

    public Task StopAsync(string number, CancellationToken cancellation) => Task.FromResult(stopped.Add(number));

    public Task StartAsync(string number, CancellationToken cancellation) => Task.FromResult(stopped.Remove(number));

    public Task<TextEnrolment> EnrolAsync(string number, string text, CancellationToken cancellation)
    {
        if (text.Trim() != Code)
        {
            return Task.FromResult<TextEnrolment>(text.Contains('-', StringComparison.Ordinal) ? new TextEnrolment.Refused() : new TextEnrolment.NoCode());
        }

        enrolled[number] = "Sam";
        return Task.FromResult<TextEnrolment>(new TextEnrolment.Done("Sam", stopped.Contains(number)));
    }

    public Task<string?> JoinAsync(string number, string code, CancellationToken cancellation) => Task.FromResult<string?>(null);
}
