using System.Security.Cryptography;
using System.Text;

namespace Assistant.App.Web;

/// <summary>
/// How another program signs in: with a key of a person's, made by <c>people key</c>, shown once and sent as
/// <c>Authorization: Bearer</c>. The records keep its digest alone, as an address of the channel "key": it is listed and revoked like a phone.
/// </summary>
internal static class ApiKeys
{
    public const string Channel = "key";

    private const string Scheme = "Bearer ";
    private const string Prefix = "coldwalk_";
    private const int SecretLength = 32;

    /// <summary>A new key: 256 bits from the system's secure source.</summary>
    public static string New() => Prefix + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SecretLength));

    /// <summary>The key a request brings, or null.</summary>
    public static string? Of(HttpRequest request) =>
        request.Headers.Authorization.ToString() is { } told && told.StartsWith(Scheme + Prefix, StringComparison.Ordinal) ? told[Scheme.Length..] : null;

    /// <summary>What the records know it by. A key is as long as its digest: there is nothing to guess from.</summary>
    public static string AddressOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));
}
