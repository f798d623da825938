using System.Collections.Immutable;
using System.Text.Json;
using Assistant.Dialogue.Replies;
using Assistant.Dialogue.Visits;
using Assistant.Records.Cylinders;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.Records.Log;

/// <summary>The append-only log of all visits. Safe for use by many at once.</summary>
public sealed class EventLog : IAsyncDisposable
{
    private readonly LogWriter writer;
    private readonly ITurnLookups lookups;
    private readonly CancellationTokenSource closing = new();
    private readonly Lock watching = new();
    private EventHandler<VisitGrew>? watchers;
    private Task listening = Task.CompletedTask;

    private EventLog(IRecordsDatabase database)
    {
        Database = database;
        writer = new(database);
        lookups = database.Lookups;
    }

    public IRecordsDatabase Database { get; }

    public LogStatistics Statistics => writer.Statistics;

    /// <summary>
    /// Told of each visit whose log grew, once it is on the disk: through this program at once, through another one where the database tells
    /// of it. A handler must be quick and must not throw.
    /// </summary>
    public event EventHandler<VisitGrew>? Grew
    {
        add
        {
            lock (watching)
            {
                if (watchers is null && listening.IsCompleted && !closing.IsCancellationRequested)
                {
                    listening = Task.Run(() => Database.ListenAsync(Tell, closing.Token));
                }

                watchers += value;
            }
        }

        remove
        {
            lock (watching)
            {
                watchers -= value;
            }
        }
    }

    /// <summary>Opens the database, brings it up to date and starts the writer.</summary>
    /// <exception cref="RecordsException">The database can not be used; the message says why.</exception>
    public static async Task<EventLog> OpenAsync(IRecordsDatabase database, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(database);
        await database.OpenAsync(cancellation);
        return new(database);
    }

    /// <summary>Stores the events, the reply and what hangs on them in one transaction; returns once they are on the disk.</summary>
    /// <exception cref="RecordsException">Nothing was stored; the message says why.</exception>
    public async Task<AppendResult> AppendAsync(Append append)
    {
        ArgumentNullException.ThrowIfNull(append);
        var result = await writer.AppendAsync(append);
        if (result is Appended appended)
        {
            Tell(new(append.VisitId, appended.Version));
        }

        return result;
    }

    /// <summary>Makes ready what the first append would wait for, while something else is waited for.</summary>
    public void MakeReady() => writer.MakeReady();

    /// <summary>The events of a visit in order, numbered; empty where there is no such visit.</summary>
    /// <param name="after">Only those behind this number.</param>
    /// <exception cref="RecordsException">The records can not be read, or a later release wrote an event this one does not know.</exception>
    public Task<ImmutableArray<VisitEvent>> ReadAsync(string visitId, int after, CancellationToken cancellation = default) => Database.UseAsync(
        async context =>
        {
            var rows = await context.Events.AsNoTracking().Where(e => e.VisitId == visitId && e.Number > after).OrderBy(e => e.Number).ToListAsync(cancellation);
            try
            {
                return rows.Select(row => EventJson.Read(row.Kind, row.Body, row.Personal, row.Number)).ToImmutableArray();
            }
            catch (JsonException unknown)
            {
                throw new RecordsException(RecordsFault.Unreadable, $"The log of visit {visitId} can not be read: {unknown.Message}", unknown);
            }
        });

    /// <summary>All events of a visit in order, numbered; empty where there is no such visit.</summary>
    /// <exception cref="RecordsException">The records can not be read, or a later release wrote an event this one does not know.</exception>
    public Task<ImmutableArray<VisitEvent>> ReadAsync(string visitId, CancellationToken cancellation = default) => ReadAsync(visitId, 0, cancellation);

    /// <summary>The number of the visit's last event; 0 where there is no such visit.</summary>
    internal Task<int> VersionOfAsync(string visitId, CancellationToken cancellation) => Database.UseAsync(
        context => context.Visits.AsNoTracking().Where(v => v.Id == visitId).Select(v => v.Version).FirstOrDefaultAsync(cancellation));

    /// <summary>The visit a conversation is on now, or null.</summary>
    public async Task<string?> VisitOfAsync(string channel, string conversation, CancellationToken cancellation = default) =>
        (await CurrentVisitAsync(channel, conversation, cancellation))?.VisitId;

    /// <summary>The visit a conversation is on now and when it was closed, or null.</summary>
    internal Task<CurrentVisit?> CurrentVisitAsync(string channel, string conversation, CancellationToken cancellation) =>
        lookups.CurrentVisitAsync(channel, conversation, cancellation);

    /// <summary>True where a firm is set up.</summary>
    internal Task<bool> HasFirmsAsync(CancellationToken cancellation) => lookups.HasFirmsAsync(cancellation);

    /// <inheritdoc cref="ITurnLookups.CylinderRowsAsync"/>
    internal Task<IReadOnlyList<CylinderRow>> CylinderRowsAsync(DateTimeOffset? since, DateTimeOffset? until, CancellationToken cancellation) =>
        lookups.CylinderRowsAsync(since, until, cancellation);

    /// <summary>The reply a message got, or null where it was never applied.</summary>
    public Task<Reply?> ReplyToAsync(string channel, string messageId, CancellationToken cancellation = default) => Database.UseAsync(
        async context =>
        {
            var stored = await context.Messages.AsNoTracking()
                .Where(m => m.Channel == channel && m.MessageId == messageId)
                .Select(m => m.Reply)
                .FirstOrDefaultAsync(cancellation);
            return stored is null ? null : JsonSerializer.Deserialize<Reply>(stored, EventJson.Options);
        });

    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync();
        await writer.DisposeAsync();
        lookups.Dispose();
        await listening.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        closing.Dispose();
    }

    private void Tell(VisitGrew grew) => watchers?.Invoke(this, grew);
}
