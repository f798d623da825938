using System.Text;
using Assistant.Records.Pictures;
using SkiaSharp;

namespace Assistant.Records.Tests.Pictures;

public class PictureEncoderTests
{
    [Fact]
    public void A_telephones_place_and_maker_do_not_survive()
    {
        var sent = InventedPictures.WithExif(InventedPictures.Marked(400, 300), orientation: 1);
        Assert.Contains((byte)0xE1, Segments(sent));
        Assert.True(sent.AsSpan().IndexOf("InventCam"u8) > 0);

        var kept = PictureEncoder.Encode(sent).Jpeg;

        // JFIF header, tables, frame, scan (ISO/IEC 10918-1): nothing that could hold a place, a name or a comment.
        Assert.All(Segments(kept), marker => Assert.Contains(marker, new byte[] { 0xE0, 0xDB, 0xC0, 0xC4, 0xDA }));
        Assert.Equal(-1, kept.AsSpan().IndexOf("Exif"u8));
        Assert.Equal(-1, kept.AsSpan().IndexOf("InventCam"u8));
    }

    /// <summary>Where the beginning and the end of the stored first row belong (EXIF orientation, CIPA DC-008).</summary>
    [Theory]
    [InlineData(1, "top left", "top right")]
    [InlineData(2, "top right", "top left")]
    [InlineData(3, "bottom right", "bottom left")]
    [InlineData(4, "bottom left", "bottom right")]
    [InlineData(5, "top left", "bottom left")]
    [InlineData(6, "top right", "bottom right")]
    [InlineData(7, "bottom right", "top right")]
    [InlineData(8, "bottom left", "top left")]
    public void A_picture_taken_sideways_stands_upright(int orientation, string red, string green)
    {
        var kept = PictureEncoder.Encode(InventedPictures.WithExif(InventedPictures.Marked(400, 200), (ushort)orientation));

        Assert.Equal(orientation < 5 ? (400, 200) : (200, 400), (kept.Width, kept.Height));
        using var pixels = SKBitmap.Decode(kept.Jpeg);
        Assert.True(Corner(pixels, red) is { Red: > 200, Green: < 80 }, $"red is not at the {red}");
        Assert.True(Corner(pixels, green) is { Green: > 200, Red: < 80 }, $"green is not at the {green}");
    }

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public void A_large_picture_of_each_kind_is_kept_with_1600_pixels_at_its_longest(SKEncodedImageFormat format)
    {
        var kept = PictureEncoder.Encode(InventedPictures.Marked(4000, 3000, format));

        using var pixels = SKBitmap.Decode(kept.Jpeg);
        Assert.Equal((1600, 1200), (kept.Width, kept.Height));
        Assert.Equal((1600, 1200), (pixels.Width, pixels.Height));
        Assert.True(Corner(pixels, "top left") is { Red: > 200, Green: < 80 });
    }

    [Fact]
    public void What_is_clear_in_a_picture_becomes_white()
    {
        using var surface = SKSurface.Create(new SKImageInfo(10, 10));
        surface.Canvas.Clear(SKColors.Transparent);
        using var image = surface.Snapshot();

        using var pixels = SKBitmap.Decode(PictureEncoder.Encode(image.Encode(SKEncodedImageFormat.Png, 100).ToArray()).Jpeg);

        Assert.Equal(SKColors.White, pixels.GetPixel(5, 5));
    }

    [Fact]
    public void A_small_file_that_promises_a_huge_picture_is_refused_before_it_is_unpacked()
    {
        var refused = Assert.Throws<PictureRefusedException>(() => PictureEncoder.Encode(InventedPictures.Bomb(60_000, 60_000)));

        Assert.Equal("This picture has 60000 x 60000 pixels; 50 million are the most.", refused.Message);
    }

    [Fact]
    public void A_file_that_is_too_large_is_refused()
    {
        var refused = Assert.Throws<PictureRefusedException>(() => PictureEncoder.Encode(new byte[21_000_000]));

        Assert.Equal("This file has 21 MB; a picture may have 20 MB.", refused.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("%PDF-1.7 not a picture")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>")]
    [InlineData("GIF89a not kept")]
    public void What_is_no_picture_is_refused_in_one_line(string content)
    {
        var refused = Assert.Throws<PictureRefusedException>(() => PictureEncoder.Encode(Encoding.UTF8.GetBytes(content)));

        Assert.Equal("This is not a picture that can be kept. Send a JPEG, PNG or WebP.", refused.Message);
    }

    [Fact]
    public void A_picture_that_was_cut_off_on_the_way_is_refused()
    {
        var whole = InventedPictures.Marked(400, 300);

        Assert.Throws<PictureRefusedException>(() => PictureEncoder.Encode(whole[..(whole.Length / 2)]));
    }

    private static SKColor Corner(SKBitmap pixels, string corner) => pixels.GetPixel(
        corner.EndsWith("left", StringComparison.Ordinal) ? pixels.Width / 10 : pixels.Width * 9 / 10,
        corner.StartsWith("top", StringComparison.Ordinal) ? pixels.Height / 10 : pixels.Height * 9 / 10);

    /// <summary>The markers of the JPEG's segments up to the scan.</summary>
    private static List<byte> Segments(byte[] jpeg)
    {
        List<byte> markers = [];
        for (var i = 2; i < jpeg.Length && markers.LastOrDefault() != 0xDA; i += 2 + (jpeg[i + 2] << 8) + jpeg[i + 3])
        {
            Assert.Equal(0xFF, jpeg[i]);
            markers.Add(jpeg[i + 1]);
        }

        return markers;
    }
}
