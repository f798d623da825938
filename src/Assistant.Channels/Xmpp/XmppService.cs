using Assistant.Channels.Xmpp.Wire;
using Assistant.Records.Outbox;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Assistant.Channels.Xmpp;

/// <summary>The XMPP channel at work: keeps the line to the server, trying again with growing waits, and delivers what is due while there is one.</summary>
internal sealed partial class XmppService(XmppSettings settings, XmppLine line, OutboxDeliverer deliverer, XmppPace pace, TimeProvider clock, ILogger<XmppService> logger) : BackgroundService
{
    /// <summary>A server that stays away is told of so often, and then once in so many tries.</summary>
    private const int MostLines = 60;

    private static readonly TimeSpan BetweenDeliveries = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);

    protected override Task ExecuteAsync(CancellationToken stoppingToken) => Task.WhenAll(ConnectAsync(stoppingToken), DeliverAsync(stoppingToken));

    private async Task ConnectAsync(CancellationToken stopping)
    {
        for (var failures = 0; !stopping.IsCancellationRequested;)
        {
            var (trouble, stood) = await LiveOnceAsync(stopping);
            if (!stopping.IsCancellationRequested)
            {
                failures = stood > pace.Longest ? 1 : failures + 1;
                var wait = pace.WaitAfter(failures);
                if (failures <= MostLines || failures % MostLines == 0)
                {
                    Lost(logger, settings.Domain, trouble, wait.TotalSeconds);
                }

                await Task.Delay(wait, clock, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <returns>Why the line ended, and how long it stood.</returns>
    private async Task<(string Trouble, TimeSpan Stood)> LiveOnceAsync(CancellationToken stopping)
    {
        // A server that takes long to refuse us has not let us in.
        DateTimeOffset? began = null;
        TimeSpan Stood() => began is { } since ? clock.GetUtcNow() - since : TimeSpan.Zero;
        try
        {
            await using var stream = await ComponentStream.OpenAsync(settings, stopping);
            began = clock.GetUtcNow();
            try
            {
                await line.LiveAsync(stream, stopping);
            }
            catch (StreamBrokenException broken)
            {
                await stream.CloseAsync(broken.Condition);
                throw;
            }
            catch (OperationCanceledException)
            {
                await stream.CloseAsync(null);
                throw;
            }

            return ("", Stood());
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            return ("it was stopped", Stood());
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            return (failure is StreamBrokenException ? failure.Message : failure.ToString(), Stood());
        }
    }

    private async Task DeliverAsync(CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                // Without a line nothing is tried: what is tried too often is given up in the end.
                while (line.IsUp && await deliverer.DeliverOneAsync(stopping))
                {
                }

                await Task.Delay(BetweenDeliveries, clock, stopping);
            }
            catch (OperationCanceledException) when (stopping.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                // What was stored stays and is taken up again.
                Waiting(logger, failure.Message);
                await Task.Delay(AfterFailure, clock, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "Chat: no line to the server as {Domain}: {Trouble}. Tried again in {Seconds:0.#} s.")]
    private static partial void Lost(ILogger logger, string domain, string trouble, double seconds);

    [LoggerMessage(LogLevel.Error, "Chat: replies wait: {Message}")]
    private static partial void Waiting(ILogger logger, string message);
}
