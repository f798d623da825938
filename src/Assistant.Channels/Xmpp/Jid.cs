using System.Buffers;
using System.Diagnostics.CodeAnalysis;

namespace Assistant.Channels.Xmpp;

/// <summary>An XMPP address (RFC 7622): local part, domain, resource. Local part and domain are compared in lower case.</summary>
/// <param name="Local">The name before the at sign, or null.</param>
/// <param name="Resource">What follows the slash, or null: a device, or in a room the nick.</param>
public sealed record Jid(string? Local, string Domain, string? Resource)
{
    /// <summary>RFC 7622: each part has 1023 octets at most.</summary>
    private const int LongestPart = 1023;

    private static readonly SearchValues<char> NotInName = SearchValues.Create("\"&'/:<>@ \t");

    /// <summary>The account or room, without device or nick.</summary>
    public Jid Bare => Resource is null ? this : this with { Resource = null };

    /// <exception cref="FormatException">It is no address.</exception>
    public static Jid Parse(string text) => TryParse(text, out var jid) ? jid : throw new FormatException($"{text} is no XMPP address.");

    public static bool TryParse(string? text, [NotNullWhen(true)] out Jid? jid)
    {
        jid = null;
        var rest = text ?? "";
        var slash = rest.IndexOf('/', StringComparison.Ordinal);
        var resource = slash < 0 ? null : rest[(slash + 1)..];
        rest = slash < 0 ? rest : rest[..slash];
        var at = rest.IndexOf('@', StringComparison.Ordinal);
        var local = at < 0 ? null : rest[..at].ToLowerInvariant();
        var domain = rest[(at + 1)..].ToLowerInvariant();
        if (!IsName(domain) || (local is not null && !IsName(local)) || (resource is not null && !IsPart(resource)))
        {
            return false;
        }

        jid = new(local, domain, resource);
        return true;
    }

    public override string ToString() => (Local is null ? Domain : $"{Local}@{Domain}") + (Resource is null ? "" : "/" + Resource);

    private static bool IsName(string part) => IsPart(part) && !part.AsSpan().ContainsAny(NotInName);

    private static bool IsPart(string part) => part.Length is > 0 and <= LongestPart && !part.Any(char.IsControl);
}
