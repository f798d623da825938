namespace Assistant.Records.Outbox;

/// <summary>
/// Delivers what is due, one reply at a time, and tries again with growing waits. That an attempt begins is on the disk before it is
/// made: after a power cut the reply waits for its delivery report before it is sent once more. Of several programs one makes it.
/// </summary>
public sealed class OutboxDeliverer(ReplyOutbox outbox, IReplySender sender, DeliveryOptions options, TimeProvider clock)
{
    private readonly Grouping grouping = new(sender.Groups, options.Quiet, options.LongestQuiet);

    /// <summary>Delivers what is due now.</summary>
    /// <returns>How many attempts were made.</returns>
    public async Task<int> DeliverDueAsync(CancellationToken cancellation = default)
    {
        var attempts = 0;
        while (await DeliverOneAsync(cancellation))
        {
            attempts++;
        }

        return attempts;
    }

    /// <summary>Makes one attempt for the reply that is due longest; false where none is due.</summary>
    public async Task<bool> DeliverOneAsync(CancellationToken cancellation = default)
    {
        var now = clock.GetUtcNow();
        if (await outbox.TakeNextAsync(sender.Channel, now, now - options.Doubt, grouping, cancellation) is not { } item)
        {
            return false;
        }

        switch (await sender.SendAsync(item, cancellation))
        {
            case HandedOver:
                await outbox.HandedOverAsync(item.Id, now, cancellation);
                break;
            case Refused refused:
                await outbox.GiveUpAsync(item.Id, clock.GetUtcNow(), refused.Trouble, cancellation);
                break;
            case NotSent failed:
                await AgainAsync(item.Id, item.Attempts + 1, failed.Trouble, cancellation);
                break;
        }

        return true;
    }

    /// <summary>Takes a channel's delivery report. The same report again changes nothing.</summary>
    /// <param name="attempt">The attempt it speaks of: a failure of an earlier one is old news.</param>
    public async Task ReportAsync(long id, int attempt, DeliveryReport report, CancellationToken cancellation = default)
    {
        switch (report)
        {
            case DeliveryReport.Arrived:
                await outbox.ArrivedAsync(id, clock.GetUtcNow(), cancellation);
                break;
            case DeliveryReport.OnItsWay:
                await outbox.HandedOverAsync(id, clock.GetUtcNow(), cancellation);
                break;
            case DeliveryReport.Failed when await outbox.AttemptsAsync(id, cancellation) == attempt:
                await AgainAsync(id, attempt, "the network reported that it could not be delivered", cancellation);
                break;
        }
    }

    private Task AgainAsync(long id, int attempts, string trouble, CancellationToken cancellation) => attempts >= options.Attempts
        ? outbox.GiveUpAsync(id, clock.GetUtcNow(), trouble, cancellation)
        : outbox.TryAgainAsync(id, clock.GetUtcNow() + options.WaitAfter(attempts), trouble, cancellation);
}

/// <summary>What a channel reports of a reply it has taken over.</summary>
public enum DeliveryReport
{
    /// <summary>The network has it.</summary>
    OnItsWay,

    /// <summary>It is on the phone.</summary>
    Arrived,

    /// <summary>It will not get there.</summary>
    Failed,
}
