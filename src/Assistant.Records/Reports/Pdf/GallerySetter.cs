using Assistant.Records.Reports.Model;
using Assistant.Records.Reports.Sheet;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Sets pictures two in a row, each with its caption under it.</summary>
internal sealed class GallerySetter(PageFlow flow, TextSetter text)
{
    private const double Gap = 14;
    private const double Tallest = 220;

    public void Set(Gallery gallery)
    {
        var width = Half(flow.Width);
        foreach (var pair in gallery.Pictures.Chunk(2))
        {
            var height = pair.Max(p => Size(p.Picture, width).Height);
            flow.Need(height + 50);
            var top = flow.Y;
            var lowest = top;
            for (var i = 0; i < pair.Length; i++)
            {
                var page = flow.Graphics;
                flow.Y = top;
                Draw(pair[i].Picture, i * (width + Gap), width);
                flow.Y = top + height + 4;
                text.Caption(pair[i].Caption, i * (width + Gap), width);
                // A caption that ran over to a new page takes the rest with it.
                (top, lowest) = ReferenceEquals(page, flow.Graphics) ? (top, Math.Max(lowest, flow.Y)) : (flow.Y, flow.Y);
            }

            flow.Y = lowest;
        }
    }

    /// <summary>The height of the first row without its captions, in points.</summary>
    public static double FirstRow(Gallery gallery, double width) => gallery.Pictures.Take(2).Max(p => Size(p.Picture, Half(width)).Height);

    private static double Half(double width) => (width - Gap) / 2;

    private void Draw(ReportedPicture picture, double indent, double width)
    {
        if (picture.Jpeg is null)
        {
            return;
        }

        using var stream = new MemoryStream(picture.Jpeg);
        using var image = XImage.FromStream(stream);
        var size = Size(picture, width);
        flow.Graphics.DrawImage(image, flow.Left + indent, flow.Y, size.Width, size.Height);
    }

    private static XSize Size(ReportedPicture picture, double width)
    {
        if (picture.Jpeg is null)
        {
            return new(0, 0);
        }

        var scale = Math.Min(width / picture.Width, Tallest / picture.Height);
        return new(picture.Width * scale, picture.Height * scale);
    }
}
