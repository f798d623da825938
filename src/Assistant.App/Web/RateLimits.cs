using System.Globalization;
using System.Threading.RateLimiting;

namespace Assistant.App.Web;

/// <summary>
/// How much one may ask of the program in a minute: a person where people sign in, an address at the door (a number that texts
/// has its own, <see cref="TextsOfANumber"/>). Far above what hands can do; there so that one broken or hostile client does not take the others' turns. What is refused was
/// not stored, and says when to come again.
/// </summary>
internal static class RateLimits
{
    public const string Door = "door";
    public const string Turns = "turns";
    public const string Uploads = "uploads";
    public const string Reports = "reports";

    public const int DoorTries = 10;
    public const int TurnsOfAPerson = 120;
    public const int PiecesOfAPerson = 240;

    public const int ReportsOfAPerson = 60;

    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    public static IServiceCollection AddRateLimits(this IServiceCollection services) => services.AddRateLimiter(limits =>
    {
        limits.AddPolicy(Door, context => Window(Address(context), DoorTries));
        limits.AddPolicy(Turns, context => Bucket(Who(context), TurnsOfAPerson));
        limits.AddPolicy(Uploads, context => Bucket(Who(context), PiecesOfAPerson));
        limits.AddPolicy(Reports, context => Bucket(Who(context), ReportsOfAPerson));
        limits.OnRejected = async (rejected, cancellation) =>
        {
            var seconds = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? Math.Max(1, (int)Math.Ceiling(wait.TotalSeconds)) : 60;
            rejected.HttpContext.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            rejected.HttpContext.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            await rejected.HttpContext.Response.WriteAsJsonAsync(new ErrorView($"Too much at once: nothing of this was stored. Try again in {seconds} seconds."), cancellation);
        };
    });

    private static string Who(HttpContext context) => SignIn.PersonOf(context)?.Id ?? Address(context);

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";

    private static RateLimitPartition<string> Window(string who, int permits) =>
        RateLimitPartition.GetFixedWindowLimiter(who, _ => new() { PermitLimit = permits, Window = Minute });

    // A call where the signal comes back brings a pocketful at once: the whole minute's may come together.
    private static RateLimitPartition<string> Bucket(string who, int permits) =>
        RateLimitPartition.GetTokenBucketLimiter(who, _ => new() { TokenLimit = permits, TokensPerPeriod = permits / 60, ReplenishmentPeriod = TimeSpan.FromSeconds(1) });
}
