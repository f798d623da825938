using System.Globalization;
using System.Net;
using System.Text;

namespace Assistant.Records.Plots.Drawing;

/// <summary>
/// Draws a plot as SVG that needs no style sheet: in the colour of the text around it, by day, by night and on paper. A page may set
/// <c>--plot-paper</c> to the colour behind it, which fills the hollow dots. Attributes alone, no styles: a strict content policy lets it through.
/// </summary>
internal static class SvgPen
{
    private const string Cleared = " paint-order=\"stroke\" stroke=\"var(--plot-paper, #fff)\" stroke-width=\"3\" stroke-linejoin=\"round\"";

    /// <param name="id">Begins the ids in it, so that a page can show a plot twice.</param>
    public static string Draw(Plot plot, string id = "plot")
    {
        var drawing = plot.Drawing;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" viewBox=\"0 0 {PlotDrawing.Width} {PlotDrawing.Height}\" role=\"img\" ")
            .Append(CultureInfo.InvariantCulture, $"aria-labelledby=\"{id}-{plot.Name}-title {id}-{plot.Name}-text\" font-family=\"DejaVu Sans, Verdana, Arial, sans-serif\" font-size=\"{PlotDrawing.TextSize}\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-{plot.Name}-title\">{Text(plot.Title)}</title>\n<desc id=\"{id}-{plot.Name}-text\">{Text(plot.Alt)}</desc>\n");
        foreach (var stroke in drawing.Strokes.Where(s => s.Points.Length > 1))
        {
            var points = string.Join(' ', stroke.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##},{p.Y:0.##}")));
            svg.Append(CultureInfo.InvariantCulture, $"<polyline class=\"{stroke.Ink.ToString().ToLowerInvariant()}\" fill=\"none\" stroke=\"currentColor\" {Look(stroke.Ink)} points=\"{points}\"/>\n");
        }

        foreach (var dot in drawing.Dots)
        {
            var fill = dot.IsHollow ? "var(--plot-paper, #fff)" : "currentColor";
            svg.Append(CultureInfo.InvariantCulture, $"<circle{(dot.IsHollow ? " class=\"hollow\"" : "")} cx=\"{dot.At.X:0.##}\" cy=\"{dot.At.Y:0.##}\" r=\"3.2\" fill=\"{fill}\" stroke=\"currentColor\" stroke-width=\"1.4\"/>\n");
        }

        foreach (var label in drawing.Labels)
        {
            var anchor = label.Anchor switch { < 0 => "start", 0 => "middle", _ => "end" };
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{label.At.X:0.##}\" y=\"{label.At.Y:0.##}\" text-anchor=\"{anchor}\" fill=\"currentColor\"{(label.IsInside ? Cleared : "")}>{Text(label.Text)}</text>\n");
        }

        return svg.Append("</svg>").ToString();
    }

    private static string Look(Ink ink) => ink switch
    {
        Ink.Frame => "stroke-width=\"1\"",
        Ink.Grid => "stroke-width=\"0.7\" stroke-opacity=\"0.16\"",
        Ink.Ground => "stroke-width=\"1.2\" stroke-opacity=\"0.55\"",
        Ink.Guide => "stroke-width=\"1\" stroke-dasharray=\"1.5 2.5\"",
        Ink.Design => "stroke-width=\"1.3\" stroke-dasharray=\"6 4\"",
        Ink.Measured => "stroke-width=\"2.2\" stroke-linejoin=\"round\"",
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "An ink without a look."),
    };

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
