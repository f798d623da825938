using System.Threading.RateLimiting;

namespace Assistant.App.Web;

/// <summary>
/// How many texts one number may send in a minute. A gateway brings a text again until it is taken: one that is refused here is late,
/// and not lost.
/// </summary>
internal sealed class TextsOfANumber : IDisposable
{
    public const int Most = 120;

    private readonly PartitionedRateLimiter<string> numbers = PartitionedRateLimiter.Create<string, string>(number => RateLimitPartition.GetTokenBucketLimiter(
        number, _ => new() { TokenLimit = Most, TokensPerPeriod = Most / 60, ReplenishmentPeriod = TimeSpan.FromSeconds(1) }));

    /// <exception cref="RequestRefused">The number has sent too many.</exception>
    public void Admit(string number)
    {
        using var lease = numbers.AttemptAcquire(number);
        if (!lease.IsAcquired)
        {
            throw new RequestRefused("Too many texts from this number in a minute: bring it again later.", StatusCodes.Status429TooManyRequests);
        }
    }

    public void Dispose() => numbers.Dispose();
}
