using Assistant.Records.Outbox;
using Assistant.Records.Rooms;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Endpoint;

/// <summary>Delivers what waits for conversations behind the bot endpoint: replies in threads, news, reminders.</summary>
internal sealed partial class BotDelivery(RoomStore rooms, ReplyOutbox outbox, BotPosts posts, TimeProvider clock, ILogger<BotDelivery> logger) : BackgroundService
{
    /// <summary>A service that is there again is found within seconds, and a reply is worth being late: patience for a day.</summary>
    private static readonly DeliveryOptions Persistence = new() { FirstWait = TimeSpan.FromSeconds(2), LongestWait = TimeSpan.FromMinutes(5), Attempts = 300 };

    /// <summary>Whoever waits for the program to answer after a start goes first.</summary>
    private static readonly TimeSpan BeforeTheFirst = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(200);

    /// <summary>Within this a conversation noted since, on this program or another, is known.</summary>
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);

    private readonly Dictionary<string, (BotSender Sender, OutboxDeliverer Deliverer)> channels = new(StringComparer.Ordinal);
    private long? looked;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Delay(BeforeTheFirst, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await DeliverAsync(stoppingToken);
                await Task.Delay(Beat, clock, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                // What was stored stays and is taken up again.
                Waiting(logger, failure.Message);
                await Task.Delay(AfterFailure, clock, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task DeliverAsync(CancellationToken cancellation)
    {
        if (looked is not { } last || clock.GetElapsedTime(last) >= BetweenLooks)
        {
            await LookAsync(cancellation);
            looked = clock.GetTimestamp();
        }

        foreach (var (_, deliverer) in channels.Values)
        {
            while (await deliverer.DeliverOneAsync(cancellation))
            {
            }
        }
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        foreach (var known in (await rooms.WithReferenceAsync(cancellation)).GroupBy(r => r.Channel))
        {
            if (!channels.TryGetValue(known.Key, out var channel))
            {
                var made = new BotSender(known.Key, posts);
                channels[known.Key] = channel = (made, new(outbox, made, Persistence, clock));
            }

            channel.Sender.Know(known);
        }
    }

    [LoggerMessage(LogLevel.Error, "Bot: replies wait: {Message}")]
    private static partial void Waiting(ILogger logger, string message);
}
