using System.Diagnostics.Metrics;
using Assistant.Records.Conversations;
using Assistant.Records.Storage;
using Microsoft.EntityFrameworkCore;

namespace Assistant.App.Hosting;

/// <summary>What waits in the records, looked at every few seconds while somebody collects it: replies to deliver, texts to answer, reminders past their time.</summary>
internal sealed class RecordsGauges : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(15);

    /// <summary>Reminders are given by a poll: only past this are they late.</summary>
    private static readonly TimeSpan Late = TimeSpan.FromMinutes(2);

    private readonly IRecordsDatabase database;
    private readonly TimeProvider clock;
    private readonly Meter meter = new(TurnTelemetry.Name);
    private long outbox;
    private long inbox;
    private long reminders;

    public RecordsGauges(CallRoom room, TimeProvider clock)
    {
        (database, this.clock) = (room.Log.Database, clock);
        meter.CreateObservableGauge("coldwalk.outbox.depth", () => Interlocked.Read(ref outbox), "{reply}", "Replies that wait to be delivered.");
        meter.CreateObservableGauge("coldwalk.inbox.depth", () => Interlocked.Read(ref inbox), "{message}", "Texts that were taken and not answered yet.");
        meter.CreateObservableGauge("coldwalk.reminders.late", () => Interlocked.Read(ref reminders), "{reminder}", "Reminders two minutes or more past their time.");
    }

    public override void Dispose()
    {
        meter.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        do
        {
            try
            {
                await LookAsync(stoppingToken);
            }
            catch (Exception failure) when (failure is not OperationCanceledException && database.Explain(failure) is not null)
            {
                // The last figures stand until the records can be read again; readiness tells that they can not.
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        var late = clock.GetUtcNow() - Late;
        await using var records = database.NewContext();
        Interlocked.Exchange(ref outbox, await records.Outbox.LongCountAsync(o => o.DeliveredAt == null && o.GaveUpAt == null, cancellation));
        Interlocked.Exchange(ref inbox, await records.Inbox.LongCountAsync(i => i.HandledAt == null, cancellation));
        Interlocked.Exchange(ref reminders, await records.Reminders.LongCountAsync(r => r.DoneAt == null && r.Due < late, cancellation));
    }
}
