using SkiaSharp;

namespace Assistant.Records.Pictures;

/// <summary>
/// Takes a JPEG, PNG or WebP apart into pixels and makes a new JPEG of them, so that nothing else of the file survives: no place,
/// no device, no name, no profile.
/// </summary>
public static class PictureEncoder
{
    /// <exception cref="PictureRefusedException">It is no picture, too large, or cut off.</exception>
    public static EncodedPicture Encode(byte[] file)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (file.Length > PictureLimits.LargestFile)
        {
            throw new PictureRefusedException($"This file has {file.Length / 1_000_000} MB; a picture may have {PictureLimits.LargestFile / 1_000_000} MB.");
        }

        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec?.EncodedFormat is not (SKEncodedImageFormat.Jpeg or SKEncodedImageFormat.Png or SKEncodedImageFormat.Webp))
        {
            throw new PictureRefusedException("This is not a picture that can be kept. Send a JPEG, PNG or WebP.");
        }

        if ((long)codec.Info.Width * codec.Info.Height > PictureLimits.MostPixels)
        {
            throw new PictureRefusedException($"This picture has {codec.Info.Width} x {codec.Info.Height} pixels; {PictureLimits.MostPixels / 1_000_000} million are the most.");
        }

        using var pixels = Decode(codec);
        return Draw(pixels, codec.EncodedOrigin);
    }

    private static SKBitmap Decode(SKCodec codec)
    {
        // A JPEG can be unpacked at a fraction of its size, which saves memory; the others give their full size here.
        var wanted = Math.Min(1f, (float)PictureLimits.LongestEdge / Math.Max(codec.Info.Width, codec.Info.Height));
        var size = codec.GetScaledDimensions(wanted);
        if (Math.Max(size.Width, size.Height) < PictureLimits.LongestEdge)
        {
            size = codec.Info.Size;
        }

        var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb()));
        if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        throw new PictureRefusedException("This picture is cut off or damaged. Send it again.");
    }

    private static EncodedPicture Draw(SKBitmap pixels, SKEncodedOrigin origin)
    {
        var isTurned = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (uprightWidth, uprightHeight) = isTurned ? (pixels.Height, pixels.Width) : (pixels.Width, pixels.Height);
        var scale = Math.Min(1f, (float)PictureLimits.LongestEdge / Math.Max(uprightWidth, uprightHeight));
        var (width, height) = (Math.Max(1, (int)MathF.Round(uprightWidth * scale)), Math.Max(1, (int)MathF.Round(uprightHeight * scale)));

        using var surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Scale((float)width / uprightWidth, (float)height / uprightHeight);
        var upright = Upright(origin, pixels.Width, pixels.Height);
        canvas.Concat(in upright);
        using var image = SKImage.FromBitmap(pixels);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var drawn = surface.Snapshot();
        using var jpeg = drawn.Encode(SKEncodedImageFormat.Jpeg, PictureLimits.Quality);
        return EncodedPicture.Of(jpeg.ToArray(), width, height);
    }

    /// <summary>The turn that sets a picture upright (orientations 1 to 8 of the EXIF standard, CIPA DC-008).</summary>
    private static SKMatrix Upright(SKEncodedOrigin origin, int width, int height) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, height, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, height, -1, 0, width, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, width, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
