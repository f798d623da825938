using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;
using Microsoft.EntityFrameworkCore.Storage;

namespace Assistant.Records.Inbox;

/// <summary>A message under way to be handled. Disposed before it is, it waits again; so it does where the program that had it is gone.</summary>
public sealed class TakenMessage : IAsyncDisposable
{
    private readonly IRecordsDatabase database;
    private readonly RecordsContext context;
    private readonly IDbContextTransaction? hold;
    private readonly InboxRow row;

    private TakenMessage(IRecordsDatabase database, RecordsContext context, IDbContextTransaction? hold, InboxRow row)
    {
        (this.database, this.context, this.hold, this.row) = (database, context, hold, row);
        Message = new(row.Channel, row.MessageId, row.Conversation, row.Text, row.SentAt, row.ReceivedAt);
    }

    public ReceivedMessage Message { get; }

    /// <summary>It is handled: its words go.</summary>
    /// <exception cref="RecordsException">It could not be noted: the message waits again.</exception>
    public Task HandledAsync(DateTimeOffset at, CancellationToken cancellation = default) => database.InTurnAsync(() => database.ExplainAsync(async () =>
    {
        (row.HandledAt, row.Text) = (at, "");
        await context.SaveChangesAsync(cancellation);
        await (hold?.CommitAsync(cancellation) ?? Task.CompletedTask);
        return 0;
    }), cancellation);

    public async ValueTask DisposeAsync()
    {
        // Its transaction, where it is still open, is rolled back with it.
        await context.DisposeAsync();
    }

    /// <param name="messages">Of these the first that is free.</param>
    internal static Task<TakenMessage?> TakeAsync(IRecordsDatabase database, IReadOnlyList<long> messages, CancellationToken cancellation) => database.ExplainAsync(async () =>
    {
        var context = database.NewContext();
        try
        {
            var hold = context.HasManyWriters ? await context.Database.BeginTransactionAsync(cancellation) : null;
            if (await context.HoldFirstAsync(messages, cancellation) is { } row)
            {
                return new TakenMessage(database, context, hold, row);
            }
        }
        catch
        {
            await context.DisposeAsync();
            throw;
        }

        await context.DisposeAsync();
        return null;
    });
}
