using Assistant.Records.Outbox;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Text;

/// <summary>The text-message channel at work: handles what came in, gives reminders, delivers what is due; woken by each message, and every second besides.</summary>
public sealed partial class TextService(TextDesk desk, TextReminders reminders, OutboxDeliverer deliverer, TimeProvider clock, ILogger<TextService> logger) : BackgroundService
{
    private static readonly TimeSpan Pace = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BetweenForgetting = TimeSpan.FromHours(12);

    private readonly SemaphoreSlim bell = new(0, 1);

    /// <summary>Something came in.</summary>
    public void Ring()
    {
        try
        {
            bell.Release();
        }
        catch (SemaphoreFullException)
        {
            // It rings already.
        }
    }

    public override void Dispose()
    {
        bell.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var forgot = DateTimeOffset.MinValue;
        var answering = RepeatAsync(
            async () =>
            {
                if (clock.GetUtcNow() - forgot > BetweenForgetting)
                {
                    await desk.ForgetAsync(stoppingToken);
                    forgot = clock.GetUtcNow();
                }

                await desk.HandleAllAsync(stoppingToken);
                await reminders.GiveDueAsync(stoppingToken);
                await bell.WaitAsync(Pace, stoppingToken);
            },
            stoppingToken);

        // A gateway that answers slowly holds up no message that comes in.
        var delivering = RepeatAsync(
            async () =>
            {
                await deliverer.DeliverDueAsync(stoppingToken);
                await Task.Delay(TimeSpan.FromMilliseconds(200), clock, stoppingToken);
            },
            stoppingToken);
        await Task.WhenAll(answering, delivering);
    }

    private async Task RepeatAsync(Func<Task> work, CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                await work();
            }
            catch (OperationCanceledException) when (stopping.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                // What was stored stays and is taken up again.
                Failed(logger, failure.Message);
                await Task.Delay(AfterFailure, clock, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    [LoggerMessage(LogLevel.Error, "Text messages wait: {Message}")]
    private static partial void Failed(ILogger logger, string message);
}
