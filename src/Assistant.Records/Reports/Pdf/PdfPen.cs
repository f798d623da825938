using Assistant.Records.Reports.Drawing;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Draws a cycle on a page.</summary>
internal static class PdfPen
{
    public static void Draw(CycleDrawing drawing, PageFlow flow)
    {
        flow.Need(drawing.Height + 50);
        var graphics = flow.Graphics;
        var font = ReportFonts.Of(8);
        var (left, top) = (flow.Left, flow.Y);
        XPoint At(DrawnPoint point) => new(left + point.X, top + point.Y);

        foreach (var stroke in drawing.Strokes.Where(s => s.Points.Length > 1))
        {
            graphics.DrawLines(Pen(stroke.Ink), [.. stroke.Points.Select(At)]);
        }

        foreach (var dot in drawing.Dots)
        {
            var at = At(dot.At);
            graphics.DrawEllipse(new XPen(XColors.Black, 1.3), dot.IsHollow ? XBrushes.White : XBrushes.Black, at.X - 3, at.Y - 3, 6, 6);
        }

        foreach (var label in drawing.Labels)
        {
            var at = At(label.At);
            var width = graphics.MeasureString(label.Text, font).Width;
            graphics.DrawString(label.Text, font, XBrushes.Black, at.X - (width * (label.Anchor + 1) / 2), at.Y);
        }

        flow.Y += drawing.Height + 4;
    }

    private static XPen Pen(Ink ink) => ink switch
    {
        Ink.Grid => new(XColor.FromArgb(226, 226, 226), 0.5),
        Ink.Dome => new(XColors.Gray, 1),
        Ink.Design => new(XColors.Black, 1) { DashStyle = XDashStyle.Dash },
        Ink.Measured => new(XColors.Black, 1.8) { LineJoin = XLineJoin.Round },
        _ => new(XColors.Black, 0.8),
    };
}
