using Assistant.Records.Outbox;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Text;

/// <summary>The text-message channel at work: handles what came in, gives reminders, delivers what is due; woken by each message, and every second besides.</summary>
/// <param name="workers">How many messages are handled, and how many replies delivered, at the same time.</param>
public sealed partial class TextService(TextDesk desk, TextReminders reminders, OutboxDeliverer deliverer, TimeProvider clock, int workers, ILogger<TextService> logger) : BackgroundService
{
    private static readonly TimeSpan Pace = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BetweenForgetting = TimeSpan.FromHours(12);

    private readonly SemaphoreSlim bell = new(0, workers);

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
        var minding = RepeatAsync(
            async () =>
            {
                if (clock.GetUtcNow() - forgot > BetweenForgetting)
                {
                    await desk.ForgetAsync(stoppingToken);
                    forgot = clock.GetUtcNow();
                }

                await reminders.GiveDueAsync(stoppingToken);
                await Task.Delay(Pace, clock, stoppingToken);
            },
            stoppingToken);

        // A gateway that answers slowly holds up no message that comes in.
        await Task.WhenAll([minding, .. Enumerable.Range(0, workers).SelectMany(_ => new[] { AnswerAsync(stoppingToken), DeliverAsync(stoppingToken) })]);
    }

    private Task AnswerAsync(CancellationToken stopping) => RepeatAsync(
        async () =>
        {
            await desk.HandleAllAsync(stopping);
            await bell.WaitAsync(Pace, stopping);
        },
        stopping);

    private Task DeliverAsync(CancellationToken stopping) => RepeatAsync(
        async () =>
        {
            await deliverer.DeliverDueAsync(stopping);
            await Task.Delay(TimeSpan.FromMilliseconds(200), clock, stopping);
        },
        stopping);

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
