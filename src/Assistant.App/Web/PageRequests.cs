using System.Text.RegularExpressions;
using Assistant.Trade.Quantities;

namespace Assistant.App.Web;

/// <summary>A visit is asked for from the page.</summary>
/// <param name="Id">Made on the page; the visit's address. The same id again opens nothing new.</param>
public sealed record OpenVisitRequest(string? Id, string? By, string? Site, string? AssetId, string? Refrigerant, string? Units, bool Demo);

/// <summary>Something said on the page.</summary>
/// <param name="Id">Made on the page: the same id again gets the same reply and changes nothing.</param>
/// <param name="Answers">What stood on the screen when it was said (see <see cref="LateAnswer"/>), or null for free words.</param>
/// <param name="Ago">Seconds since it was said, by the phone's own clock.</param>
public sealed record SayRequest(string? Id, string? By, string? Text, string? Answers, double? Ago);

/// <summary>What has fallen due is asked for.</summary>
/// <param name="Id">Made on the page, or null: the same id again gets what it got before, in case that did not arrive, and what fell due since.</param>
public sealed record RemindRequest(string? Id);

/// <summary>What a request may hold; what does not fit is refused with one line that says what would.</summary>
internal static partial class RequestRules
{
    public const int LongestText = 2000;
    public const int LongestSite = 120;
    public const int LongestName = 60;
    public const int LongestCaption = 200;

    /// <exception cref="RequestRefused">The id is not one.</exception>
    public static string Id(string? id) => id is not null && IdPattern().IsMatch(id)
        ? id
        : throw new RequestRefused("id: 8 to 64 letters, digits and dashes, made by the page.");

    /// <exception cref="RequestRefused">The name is too long or holds control characters.</exception>
    public static string Person(string? by) => string.IsNullOrWhiteSpace(by) ? "technician" : Line("by", by, LongestName);

    /// <exception cref="RequestRefused">The text is empty, too long or holds control characters.</exception>
    public static string Line(string key, string? text, int longest)
    {
        var line = text?.Trim() ?? "";
        return line.Length == 0 ? throw new RequestRefused($"{key}: it is empty; one line of text is wanted.")
            : line.Length > longest ? throw new RequestRefused($"{key}: {line.Length} characters; {longest} are the most.")
            : line.Any(char.IsControl) ? throw new RequestRefused($"{key}: plain text on one line is wanted, without control characters.")
            : line;
    }

    /// <summary>When something was said that a phone kept for a while: an age needs no clocks that agree. Never before the visit began.</summary>
    public static DateTimeOffset SaidAt(DateTimeOffset now, double? secondsAgo, DateTimeOffset opened)
    {
        var said = now - TimeSpan.FromSeconds(secondsAgo is > 0 and < 7 * 86_400 ? secondsAgo.Value : 0);
        return said < opened && opened <= now ? opened : said;
    }

    /// <exception cref="RequestRefused">Neither us nor metric.</exception>
    public static UnitSystem Units(string? units) => units switch
    {
        null or "us" => UnitSystem.Us,
        "metric" => UnitSystem.Metric,
        _ => throw new RequestRefused("units: us or metric."),
    };

    [GeneratedRegex(@"^[A-Za-z0-9-]{8,64}\z")]
    private static partial Regex IdPattern();
}

/// <summary>A request that can not be taken as it is; the message is one line for people.</summary>
public sealed class RequestRefused(string message, int status = StatusCodes.Status400BadRequest) : Exception(message)
{
    public int Status { get; } = status;
}
