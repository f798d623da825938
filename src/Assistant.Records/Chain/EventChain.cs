using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Assistant.Records.Storage;
using Assistant.Records.Storage.Rows;

namespace Assistant.Records.Chain;

/// <summary>
/// The hash that ties each event to the one before it (SHA-256, FIPS 180-4). It covers the stored text of the event and the
/// salted digest of what is personal in it. Every part is written with its length before it, so that no two events share bytes.
/// </summary>
internal static class EventChain
{
    private const string Domain = "coldwalk-event-1";

    /// <summary>What stands before the first event of a visit.</summary>
    public static byte[] Start(string visitId) => Hash("coldwalk-visit-1"u8.ToArray(), Utf8(visitId));

    public static byte[] NewSalt() => RandomNumberGenerator.GetBytes(32);

    public static byte[] PersonalDigest(byte[] salt, string personal) => Hash(salt, Utf8(personal));

    public static byte[] HashOf(EventRow row) => Hash(
        Utf8(Domain), row.PrevHash, Utf8(row.VisitId), Number(row.Number), Utf8(row.Kind), Utf8(row.At), Utf8(row.Body), row.PersonalDigest);

    /// <summary>The row of an event that follows the given head.</summary>
    public static EventRow Link(string visitId, int number, byte[] head, DateTimeOffset at, SealedEvent made)
    {
        var row = new EventRow
        {
            VisitId = visitId,
            Number = number,
            Kind = made.Stored.Kind,
            At = UtcText.Write(at),
            Body = made.Stored.Body,
            Personal = made.Stored.Personal,
            Salt = made.Salt,
            PersonalDigest = made.PersonalDigest,
            PrevHash = head,
        };
        row.Hash = HashOf(row);
        return row;
    }

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Number(int number)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, number);
        return bytes;
    }

    private static byte[] Hash(params ReadOnlySpan<byte[]> parts)
    {
        var length = 0;
        foreach (var part in parts)
        {
            length += 4 + part.Length;
        }

        var all = new byte[length];
        var rest = all.AsSpan();
        foreach (var part in parts)
        {
            BinaryPrimitives.WriteInt32BigEndian(rest, part.Length);
            part.CopyTo(rest[4..]);
            rest = rest[(4 + part.Length)..];
        }

        return SHA256.HashData(all);
    }
}
