namespace Assistant.App.Hosting;

/// <summary>Looks every half minute for people who work alone and have not answered.</summary>
internal sealed partial class AlertWatch(CallRoom room, TimeProvider clock, ILogger<AlertWatch> logger) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(30);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause, clock);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await room.Reminders.AlertAsync(clock.GetUtcNow(), stoppingToken);
            }
            catch (Records.Storage.RecordsException failure)
            {
                NotLookedAt(logger, failure.Message);
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "Check-ins could not be looked at: {Reason}")]
    private static partial void NotLookedAt(ILogger logger, string reason);
}
