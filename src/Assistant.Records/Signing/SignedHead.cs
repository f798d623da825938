using System.Globalization;

namespace Assistant.Records.Signing;

/// <summary>
/// How long a visit's log was and what its last hash was, signed. A log cut off behind the signed head, or rewritten before it,
/// shows: the hashes alone can not tell a shorter log from a whole one.
/// </summary>
/// <param name="Version">The number of the last event.</param>
/// <param name="Hash">Its hash, lower-case hexadecimal.</param>
/// <param name="Signature">Lower-case hexadecimal.</param>
public sealed record SignedHead(string VisitId, int Version, string Hash, string Signature)
{
    private const string Purpose = "visit-head-1";

    public static SignedHead Of(string visitId, int version, string hash, SigningKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return new(visitId, version, hash, Convert.ToHexStringLower(key.Sign(Purpose, Text(visitId, version, hash))));
    }

    /// <summary>True where this installation signed exactly this head.</summary>
    public bool IsSignedBy(SigningKey key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Signature.Length == 64 && Signature.All(char.IsAsciiHexDigit) && key.Fits(Purpose, Text(VisitId, Version, Hash), Convert.FromHexString(Signature));
    }

    private static string Text(string visitId, int version, string hash) => string.Create(CultureInfo.InvariantCulture, $"{version}\n{hash}\n{visitId}");
}
