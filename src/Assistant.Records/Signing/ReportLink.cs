using System.Buffers.Text;
using System.Globalization;

namespace Assistant.Records.Signing;

/// <summary>Signed links to a visit's report that expire: whoever has one reads that report until then, and nothing else.</summary>
public sealed class ReportLink(SigningKey key, TimeProvider clock)
{
    /// <summary>The longest a link may hold: 90 days.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(90);

    private const string Purpose = "report-link-1";

    /// <summary>The part of an address that stands for the report: the visit, the expiry in Unix seconds and the signature, with points between.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is not positive, or longer than <see cref="Longest"/>.</exception>
    /// <exception cref="ArgumentException">The visit's id holds something else than letters, digits and hyphens.</exception>
    public string Mint(string visitId, TimeSpan holds)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(holds, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(holds, Longest);
        if (!IsId(visitId))
        {
            throw new ArgumentException("A visit's id is letters, digits and hyphens.", nameof(visitId));
        }

        var said = string.Create(CultureInfo.InvariantCulture, $"{visitId}.{clock.GetUtcNow().Add(holds).ToUnixTimeSeconds()}");
        return $"{said}.{Base64Url.EncodeToString(key.Sign(Purpose, said))}";
    }

    /// <summary>What a link opens. A link that was changed and one that never was are not told apart.</summary>
    public LinkVerdict Check(string token)
    {
        ArgumentNullException.ThrowIfNull(token);
        if (token.Length > 400 || token.Split('.') is not [var visitId, var until, var signature] || !IsId(visitId)
            || !long.TryParse(until, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds)
            || !Base64Url.IsValid(signature) || !key.Fits(Purpose, $"{visitId}.{until}", Base64Url.DecodeFromChars(signature)))
        {
            return new(LinkStanding.Unknown, null);
        }

        return clock.GetUtcNow().ToUnixTimeSeconds() < seconds ? new(LinkStanding.Holds, visitId) : new(LinkStanding.Expired, null);
    }

    private static bool IsId(string text) => text is { Length: > 0 and <= 100 } && text.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');
}

/// <param name="VisitId">The visit whose report may be read; null unless the link holds.</param>
public sealed record LinkVerdict(LinkStanding Standing, string? VisitId);

public enum LinkStanding
{
    Holds,

    /// <summary>It was signed here and its time is over.</summary>
    Expired,

    /// <summary>It was not signed here, or was changed.</summary>
    Unknown,
}
