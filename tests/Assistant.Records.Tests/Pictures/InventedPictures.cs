using System.Buffers.Binary;
using SkiaSharp;

namespace Assistant.Records.Tests.Pictures;

/// <summary>Pictures made here: two corners marked, and a JPEG with the metadata a telephone would write.</summary>
internal static class InventedPictures
{
    /// <summary>Grey, with a red corner where the first row begins and a green one where it ends.</summary>
    public static byte[] Marked(int width, int height, SKEncodedImageFormat format = SKEncodedImageFormat.Jpeg)
    {
        using var surface = SKSurface.Create(new SKImageInfo(width, height));
        surface.Canvas.Clear(SKColors.Gray);
        surface.Canvas.DrawRect(0, 0, width / 4f, height / 4f, new SKPaint { Color = SKColors.Red });
        surface.Canvas.DrawRect(width * 3 / 4f, 0, width / 4f, height / 4f, new SKPaint { Color = SKColors.Lime });
        using var image = surface.Snapshot();
        return image.Encode(format, 95).ToArray();
    }

    /// <summary>The JPEG with an EXIF segment (CIPA DC-008): maker, orientation, and 45 deg 30 min N as the place.</summary>
    public static byte[] WithExif(byte[] jpeg, ushort orientation)
    {
        using var tiff = new MemoryStream();
        tiff.Write("II*\0"u8);
        tiff.Write([8, 0, 0, 0]);
        WriteDirectory(tiff, [Ascii(0x010F, 9, 50), Short(0x0112, orientation), Long(0x8825, 64)]);
        tiff.Write("InventCam\0"u8);
        tiff.SetLength(64);
        tiff.Position = 64;
        WriteDirectory(tiff, [AsciiInPlace(0x0001, 'N'), Rationals(0x0002, 3, 100)]);
        tiff.SetLength(100);
        tiff.Position = 100;
        foreach (var part in new[] { 45, 1, 30, 1, 0, 1 })
        {
            tiff.Write(BitConverter.GetBytes(part));
        }

        var payload = "Exif\0\0"u8.ToArray().Concat(tiff.ToArray()).ToArray();
        var segment = new byte[] { 0xFF, 0xE1, 0, 0 };
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(payload.Length + 2));
        return [.. jpeg.AsSpan(0, 2), .. segment, .. payload, .. jpeg.AsSpan(2)];
    }

    /// <summary>A tiny PNG whose header promises this many pixels (PNG 1.2: width and height at byte 16, checksum at 29).</summary>
    public static byte[] Bomb(int width, int height)
    {
        var png = Marked(8, 8, SKEncodedImageFormat.Png);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(16), width);
        BinaryPrimitives.WriteInt32BigEndian(png.AsSpan(20), height);
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(29), Crc32(png.AsSpan(12, 17)));
        return png;
    }

    private static void WriteDirectory(MemoryStream tiff, byte[][] entries)
    {
        tiff.Write(BitConverter.GetBytes((ushort)entries.Length));
        foreach (var entry in entries)
        {
            tiff.Write(entry);
        }

        tiff.Write(new byte[4]);
    }

    private static byte[] Ascii(ushort tag, int count, int offset) => Entry(tag, 2, count + 1, offset);

    private static byte[] AsciiInPlace(ushort tag, char letter) => Entry(tag, 2, 2, letter);

    private static byte[] Short(ushort tag, ushort value) => Entry(tag, 3, 1, value);

    private static byte[] Long(ushort tag, int value) => Entry(tag, 4, 1, value);

    private static byte[] Rationals(ushort tag, int count, int offset) => Entry(tag, 5, count, offset);

    private static byte[] Entry(ushort tag, ushort type, int count, int value) =>
        [.. BitConverter.GetBytes(tag), .. BitConverter.GetBytes(type), .. BitConverter.GetBytes(count), .. BitConverter.GetBytes(value)];

    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 1 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
            }
        }

        return ~crc;
    }
}
