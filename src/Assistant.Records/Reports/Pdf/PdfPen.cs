using Assistant.Records.Plots.Drawing;
using Assistant.Records.Reports.Sheet;
using PdfSharp.Drawing;

namespace Assistant.Records.Reports.Pdf;

/// <summary>Draws a plot on a page.</summary>
internal static class PdfPen
{
    private const double Scale = 0.94;
    private const double SmallScale = 0.75;

    /// <summary>The height a plot takes, in points.</summary>
    public static double HeightOf(Figure figure) => PlotDrawing.Height * ScaleOf(figure);

    private static double ScaleOf(Figure figure) => figure.IsSmall ? SmallScale : Scale;

    public static void Draw(Figure figure, PageFlow flow)
    {
        var (drawing, scale, height) = (figure.Plot.Drawing, ScaleOf(figure), HeightOf(figure));
        flow.Need(height + 30);
        flow.Y += 6;
        var graphics = flow.Graphics;
        var font = ReportFonts.Of(PlotDrawing.TextSize * scale * 0.85);
        var (left, top) = (flow.Left, flow.Y);
        XPoint At(DrawnPoint point) => new(left + (point.X * scale), top + (point.Y * scale));

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
            if (label.IsInside)
            {
                graphics.DrawRectangle(XBrushes.White, at.X - (width * (label.Anchor + 1) / 2) - 1, at.Y - (font.Size * 0.85), width + 2, font.Size);
            }

            graphics.DrawString(label.Text, font, XBrushes.Black, at.X - (width * (label.Anchor + 1) / 2), at.Y);
        }

        flow.Y += height + 4;
    }

    private static XPen Pen(Ink ink) => ink switch
    {
        Ink.Grid => new(XColor.FromArgb(226, 226, 226), 0.5),
        Ink.Ground => new(XColors.Gray, 1),
        Ink.Guide => new(XColors.Black, 0.8) { DashStyle = XDashStyle.Dot },
        Ink.Design => new(XColors.Black, 1) { DashStyle = XDashStyle.Dash },
        Ink.Measured => new(XColors.Black, 1.8) { LineJoin = XLineJoin.Round },
        _ => new(XColors.Black, 0.8),
    };
}
