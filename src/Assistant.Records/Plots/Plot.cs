using Assistant.Records.Plots.Drawing;

namespace Assistant.Records.Plots;

/// <summary>A picture of a visit's numbers, to be printed, shown and read aloud.</summary>
/// <param name="Name">Its name in an address, kebab-case.</param>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Alt">The same in words, with the numbers.</param>
public sealed record Plot(string Name, string Title, string Alt, PlotDrawing Drawing)
{
    /// <summary>The drawing as SVG, to stand inside a page or alone.</summary>
    public string Svg => SvgPen.Draw(this);
}
