using Assistant.App.Commands;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Channels;
using Assistant.Records.Assets;
using Assistant.Records.Conversations;
using Assistant.Records.Log;
using Assistant.Records.Pictures;
using Assistant.Records.Storage;

namespace Assistant.App.Hosting;

/// <summary>All that a conversation needs, put together: the sentences, the dialogue, the records and the service between them.</summary>
public sealed class CallRoom : IConversation, IAsyncDisposable
{
    private readonly PictureStore store;

    private CallRoom(DialogueParts dialogue, EventLog log, DataFolder data, ConversationOptions options)
    {
        Data = data;
        Dialogue = dialogue;
        Log = log;
        Conversations = new(log, dialogue.Engine, options);
        Assets = new(log.Database);
        Visits = new(log.Database);
        Reminders = new(this);
        store = new(log.Database);
        Pictures = new(log, store, Conversations);
        Reports = new(log, store, dialogue.Phrases);
        Links = new(log.Database, data, TimeProvider.System);
    }

    public DataFolder Data { get; }

    public DialogueParts Dialogue { get; }

    public EventLog Log { get; }

    public ConversationService Conversations { get; }

    public AssetStore Assets { get; }

    public OpenVisits Visits { get; }

    public DueReminders Reminders { get; }

    public PictureService Pictures { get; }

    public PictureStore Album => store;

    public VisitReports Reports { get; }

    public ReportLinks Links { get; }

    /// <exception cref="CommandFailure">A file beside the program can not be read.</exception>
    /// <exception cref="RecordsException">The records can not be used.</exception>
    /// <param name="isTalkedInAtOnce">True where a visit opens before anything else: what that waits for is made ready while the files are read.</param>
    public static async Task<CallRoom> OpenAsync(DataFolder data, ConversationOptions options, CancellationToken cancellation, bool isTalkedInAtOnce = false)
    {
        // The files are read while the database opens: together they are most of the wait for the first question.
        var dialogue = Task.Run(DialogueParts.Load, cancellation);
        var log = await EventLog.OpenAsync(data.Database, cancellation);
        if (isTalkedInAtOnce)
        {
            log.MakeReady();
        }

        try
        {
            return new(await dialogue, log, data, options);
        }
        catch
        {
            await log.DisposeAsync();
            throw;
        }
    }

    public Task<Reply> HandleAsync(InboundMessage message, CancellationToken cancellationToken) =>
        Conversations.HandleAsync(message, cancellation: cancellationToken);

    /// <summary>Where a visit stands and what it asks now, without a word being said or stored.</summary>
    public Reply Now(VisitState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return Dialogue.Engine.Take(state, new("", "", "", "", state.OpenedAt, "repeat")).Reply with { Cautions = [] };
    }

    public async ValueTask DisposeAsync()
    {
        Conversations.Dispose();
        store.Dispose();
        await Log.DisposeAsync();
    }
}
