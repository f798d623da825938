using System.Security.Cryptography;

namespace Assistant.Records.Pictures;

/// <summary>A picture as it is kept: a JPEG without any metadata, upright, no edge over <see cref="PictureLimits.LongestEdge"/>.</summary>
/// <param name="Id">The SHA-256 of the bytes in lower-case hexadecimal: the same picture has the same id.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
public sealed record EncodedPicture(string Id, byte[] Jpeg, int Width, int Height)
{
    public static EncodedPicture Of(byte[] jpeg, int width, int height) => new(Convert.ToHexStringLower(SHA256.HashData(jpeg)), jpeg, width, height);
}
