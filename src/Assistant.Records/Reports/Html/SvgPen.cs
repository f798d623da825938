using System.Globalization;
using System.Net;
using System.Text;
using Assistant.Records.Reports.Drawing;

namespace Assistant.Records.Reports.Html;

/// <summary>Draws a cycle as SVG; how each ink looks is the style sheet's.</summary>
internal static class SvgPen
{
    public static string Draw(CycleDrawing drawing)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {drawing.Width} {drawing.Height}\" role=\"img\">\n");
        foreach (var stroke in drawing.Strokes.Where(s => s.Points.Length > 1))
        {
            var points = string.Join(' ', stroke.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##},{p.Y:0.##}")));
            svg.Append(CultureInfo.InvariantCulture, $"<polyline class=\"{stroke.Ink.ToString().ToLowerInvariant()}\" points=\"{points}\"/>\n");
        }

        foreach (var dot in drawing.Dots)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<circle{(dot.IsHollow ? " class=\"hollow\"" : "")} cx=\"{dot.At.X:0.##}\" cy=\"{dot.At.Y:0.##}\" r=\"3.2\"/>\n");
        }

        foreach (var label in drawing.Labels)
        {
            var anchor = label.Anchor switch { < 0 => "start", 0 => "middle", _ => "end" };
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{label.At.X:0.##}\" y=\"{label.At.Y:0.##}\" text-anchor=\"{anchor}\">{WebUtility.HtmlEncode(label.Text)}</text>\n");
        }

        return svg.Append("</svg>").ToString();
    }
}
